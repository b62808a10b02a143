import chromium from '@sparticuz/chromium';
import {
  chromium as playwright,
  type Browser,
  type BrowserContext,
  type LaunchOptions,
} from 'playwright-core';

/** Starts the Chromium that comes with an npm package, so that no machine needs one of its own. */
export async function launchBrowser(): Promise<Browser> {
  return playwright.launch(await browserOptions());
}

/** Starts it on a folder where it keeps what its pages keep, so that it can be killed and started again. */
export async function launchBrowserOn(folder: string): Promise<BrowserContext> {
  return playwright.launchPersistentContext(folder, {
    ...(await browserOptions()),
    viewport: { width: 390, height: 844 },
  });
}

async function browserOptions(): Promise<LaunchOptions> {
  return {
    executablePath: await chromium.executablePath(),
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-sync',
      '--no-first-run',
    ],
  };
}
