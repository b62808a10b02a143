import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import { layCutLine, type Cut, type CutLine } from '../support/cut-line.js';
import {
  answerGood,
  checkItem,
  CREW,
  openItem,
  openPhone,
  photosOnServer,
  recordedChecks,
  saveCheck,
  tagsToCheck,
} from '../support/phone-page.js';

// A signal that breaks in the middle of a request or of its answer, on a line of plain bytes: what reached the server
// and what the phone heard of it differ, and each check and photo arrives once all the same.
describe('sending over a line that breaks at any byte', () => {
  let server: BuiltServer;
  let line: CutLine;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let tags: readonly string[];

  beforeAll(async () => {
    server = await startBuiltServer({ demo: true });
    line = await layCutLine(server.address);
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    page = await openPhone(context, line.address, CREW);
    tags = await tagsToCheck(page, 'Ratchet straps');
  });
  afterAll(async () => {
    await browser.close();
    await line.close();
    await server.stop();
  });

  const status = () => page.locator('.send-bar').innerText();

  /** Presses Send now, whenever it can be pressed, until all cuts were made and all is sent. */
  async function sendThrough(): Promise<void> {
    await expect
      .poll(
        async () => {
          const button = page.locator('.send-bar button:enabled');
          if ((await button.count()) > 0) await button.click({ timeout: 1_000 }).catch(() => undefined);
          return [line.cutsLeft, await status()];
        },
        { timeout: 60_000 },
      )
      .toEqual([0, expect.stringContaining('All sent at')]);
  }

  it('delivers each check once and in order', async () => {
    await context.setOffline(true);
    for (const tag of tags.slice(0, 4)) await checkItem(page, tag);
    const up: Cut[] = [0, 1, 20, 300, 700, 900, 1_100, 1_300].map((afterBytes) => ({
      way: 'up',
      afterBytes,
    }));
    const down: Cut[] = [0, 1, 12, 100, 400, 700, 900, 1_200].map((afterBytes) => ({
      way: 'down',
      afterBytes,
    }));
    line.cut(
      /^POST \/api\/items\/\d+\/checks /,
      up.flatMap((cut, at) => [cut, ...down.slice(at, at + 1)]),
    );
    await context.setOffline(false);
    await sendThrough();
    expect(await recordedChecks(server.address)).toEqual(tags.slice(0, 4));
  }, 120_000);

  it('delivers a photo once', async () => {
    const tag = tags[4] ?? '';
    await context.setOffline(true);
    await openItem(page, tag);
    await answerGood(page);
    await page.getByRole('radio', { name: 'Bad' }).nth(1).check();
    await page.locator('input[type=file]').setInputFiles({
      name: 'cut.png',
      mimeType: 'image/png',
      buffer: await page.screenshot(),
    });
    await page.getByAltText('The photo as it will be sent').waitFor();
    await saveCheck(page);
    const up: Cut[] = [0, 500, 1_500, 10_000, 30_000].map((afterBytes) => ({ way: 'up', afterBytes }));
    const down: Cut[] = [0, 50, 500].map((afterBytes) => ({ way: 'down', afterBytes }));
    line.cut(/^POST \/api\/items\/\d+\/documents /, [...up, ...down]);
    await context.setOffline(false);
    await sendThrough();
    expect(await photosOnServer(server.address, tag)).toBe(1);
    expect(await recordedChecks(server.address)).toEqual([...tags.slice(0, 4), tag]);
  }, 120_000);
});
