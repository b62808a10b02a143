import chromium from '@sparticuz/chromium';
import { chromium as playwright, type Browser } from 'playwright-core';

/** Starts the Chromium that comes with an npm package, so that no machine needs one of its own. */
export async function launchBrowser(): Promise<Browser> {
  return playwright.launch({
    executablePath: await chromium.executablePath(),
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-sync',
      '--no-first-run',
    ],
  });
}
