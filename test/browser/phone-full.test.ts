import type { Browser, BrowserContext, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import {
  answerGood,
  checkItem,
  CREW,
  giveBigPhoto,
  openItem,
  openPhone,
  recordedChecks,
  tagsToCheck,
} from '../support/phone-page.js';

// A phone without room, for real: Chromium is given a quota below what the page holds already (Chrome DevTools
// Protocol, `Storage.overrideQuotaForOrigin`), so that the browser's own store refuses to write. Chromium asks for the
// room that is left only every half minute (as seen), so an answer is given anew until the page has heard of it.
describe('the phone page on a full phone', () => {
  let server: BuiltServer;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let browserTools: CDPSession;
  let tags: readonly string[];

  beforeAll(async () => {
    server = await startBuiltServer({ demo: true });
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    page = await openPhone(context, server.address, CREW);
    tags = await tagsToCheck(page, 'Ratchet straps');
    browserTools = await context.newCDPSession(page);
    await context.setOffline(true);
    await checkItem(page, tags[0] ?? '');
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
  });

  const status = () => page.locator('.send-bar').innerText();
  const giveRoom = (quotaSize?: number) =>
    browserTools.send('Storage.overrideQuotaForOrigin', {
      origin: server.address,
      ...(quotaSize === undefined ? {} : { quotaSize }),
    });

  /** Answers a point anew until the page says that the phone is full. */
  async function becomesFull(): Promise<void> {
    const answers = page.locator('.point').nth(2).getByRole('radio');
    const saidFull = page.getByText('these answers are lost when the page is closed');
    const isFull = async () => {
      for (const nth of [1, 0]) await answers.nth(nth).check();
      return saidFull.isVisible();
    };
    await expect.poll(isFull, { timeout: 60_000, interval: 500 }).toBe(true);
  }

  it('says that the check is not saved and what to do, and keeps what was queued', async () => {
    await openItem(page, tags[1] ?? '');
    await answerGood(page);
    await page.getByRole('radio', { name: 'Bad' }).first().check();
    await giveBigPhoto(page);
    await page.getByAltText('The photo as it will be sent').waitFor();
    await giveRoom(1);
    await becomesFull();
    await page.getByRole('button', { name: 'Save the check' }).click();
    await page.getByText('This phone is full: the check is NOT saved.').waitFor();
    expect(await page.locator('.save-bar').innerText()).toContain('Delete pictures');
    expect(await page.getByRole('button', { name: 'Save the check' }).isEnabled()).toBe(true);
    expect(await status()).toContain('1 check waits to be sent');
  }, 90_000);

  it('saves the same answers with their photo once there is room', async () => {
    await giveRoom();
    await page.getByRole('button', { name: 'Save the check' }).click();
    await page.locator('.progress').waitFor();
    expect(await status()).toContain('2 checks and 1 photo wait to be sent');
  });

  it('sends on a full phone, each once, and notes it there', async () => {
    await giveRoom(1);
    await page.reload();
    await page.locator('.progress').waitFor();
    expect(await status()).toContain('2 checks and 1 photo wait to be sent');
    await context.setOffline(false);
    await expect.poll(async () => (await recordedChecks(server.address)).length, { timeout: 20_000 }).toBe(2);
    await giveRoom();
    await page.reload();
    await expect.poll(status, { timeout: 20_000 }).toContain('All sent at');
    expect(await recordedChecks(server.address)).toEqual([tags[0], tags[1]]);
  });
});
