import { AxeBuilder } from '@axe-core/playwright';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowserOn } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import {
  answerGood,
  CREW,
  openItem,
  openPhone,
  recordedChecks,
  saveCheck,
  tagsToCheck,
} from '../support/phone-page.js';

const DAY_MS = 86_400_000;

// A check that is interrupted: the phone is dropped, the battery dies, the crew is called away.
describe('a check that was begun on the phone', () => {
  let server: BuiltServer;
  let folder: string;
  let context: BrowserContext;
  let page: Page;
  let tags: readonly string[];

  beforeAll(async () => {
    server = await startBuiltServer({ demo: true });
    folder = mkdtempSync(join(tmpdir(), 'tackleroom-phone-'));
    context = await launchBrowserOn(folder);
    page = await openPhone(context, server.address, CREW);
    tags = await tagsToCheck(page, 'Ratchet straps');
    // A browser writes its cookies down now and then, and when it is closed: signed in some time ago.
    await context.close();
    context = await launchBrowserOn(folder);
    page = await openPage(context, server.address);
  });
  afterAll(async () => {
    await context.close();
    rmSync(folder, { recursive: true, force: true });
    await server.stop();
  });

  const good = (nth: number) => page.getByRole('radio', { name: 'Good' }).nth(nth);
  const checkedCount = () => page.locator('.verdict input:checked').count();

  async function openAgain(tag: string): Promise<void> {
    page = await openPage(context, server.address);
    await openItem(page, tag);
  }

  it('is offered again after the browser was killed, without a signal, with its answers, remark and photo', async () => {
    const tag = tags[0] ?? '';
    await context.setOffline(true);
    await openItem(page, tag);
    await good(0).check();
    await page.getByRole('radio', { name: 'Bad' }).nth(1).check();
    await page.getByLabel('What is wrong').fill('cut near the hook');
    await page.locator('input[type=file]').setInputFiles({
      name: 'cut.png',
      mimeType: 'image/png',
      buffer: await page.screenshot(),
    });
    await page.getByAltText('The photo as it will be sent').waitFor();
    await kept(page, 'cut near the hook');
    await killBrowser(context);
    context = await launchBrowserOn(folder);
    await context.setOffline(true);
    await openAgain(tag);
    await page.getByText(/You began to check RS-\d+ at \d\d:\d\d/).waitFor();
    expect(await page.locator('.begun').innerText()).toContain('2 of 7 points answered');
    expect(await page.getByRole('radio').count()).toBe(0);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.getByRole('button', { name: 'Go on' }).click();
    expect(await good(0).isChecked()).toBe(true);
    expect(await page.getByLabel('What is wrong').inputValue()).toBe('cut near the hook');
    await page.getByAltText('The photo as it will be sent').waitFor();
    expect(await checkedCount()).toBe(2);
  });

  it('counts as nothing until every point is answered and it is saved, and is then forgotten', async () => {
    await page.getByRole('button', { name: 'Save the check' }).click();
    await page.getByText('5 points without an answer').waitFor();
    for (const nth of [2, 3, 4, 5, 6]) await good(nth).check();
    await saveCheck(page);
    expect(await page.locator('.send-bar').innerText()).toContain('1 check and 1 photo wait to be sent');
    expect(await begunCount(page)).toBe(0);
  });

  it('goes out by itself when the signal is back, for the killed browser still knows who is signed in', async () => {
    await context.setOffline(false);
    await expect.poll(() => recordedChecks(server.address), { timeout: 20_000 }).toEqual([tags[0]]);
    await page.getByText('All sent at').waitFor();
    expect(await page.getByText('You are signed out').count()).toBe(0);
  });

  it('is forgotten when its maker begins again', async () => {
    const tag = tags[1] ?? '';
    await openItem(page, tag);
    await good(0).check();
    await expect.poll(() => begunCount(page)).toBe(1);
    await page.close();
    await openAgain(tag);
    await page.getByRole('button', { name: 'Begin again' }).click();
    await page.getByRole('radio').first().waitFor();
    expect(await checkedCount()).toBe(0);
    expect(await begunCount(page)).toBe(0);
  });

  it('of yesterday is neither offered nor saved', async () => {
    const tag = tags[2] ?? '';
    await page.goto(`${server.address}/phone#/jobs/2`);
    await openItem(page, tag);
    await answerGood(page);
    await expect.poll(() => begunCount(page)).toBe(1);
    await page.clock.setFixedTime(Date.now() + DAY_MS);
    await page.getByRole('button', { name: 'Save the check' }).click();
    await page.getByText('These answers are of yesterday or of an earlier shift').waitFor();
    await page.getByRole('link', { name: 'Gear of the job' }).click();
    await page.locator('.progress').waitFor();
    await openItem(page, tag);
    expect(await page.getByText('You began to check').count()).toBe(0);
    expect(await checkedCount()).toBe(0);
    await page.reload(); // a page that is opened forgets what is too old
    await page.getByRole('radio').first().waitFor();
    await expect.poll(() => begunCount(page)).toBe(0);
    expect(await recordedChecks(server.address)).toEqual([tags[0]]);
  });

  it('finds its place in the store of an older page, and what that one queued is sent once', async () => {
    const tag = tags[3] ?? '';
    await page.close(); // and with it the clock that was set
    await openAgain(tag);
    const check = await page.evaluate(async (itemTag) => {
      const answer = await fetch('/api/phone/jobs/2');
      const { items, checklists } = await answer.json();
      const { id, kind } = items.find((each: { tag: string }) => each.tag === itemTag);
      const { points } = checklists.find((each: { kind: string }) => each.kind === kind);
      const answers = points.map(({ key }: { key: string }) => ({ point: key, answer: 'good' }));
      const me = await (await fetch('/api/phone/me')).json();
      const body = { jobId: 2, checkedAt: new Date().toISOString(), offsetMinutes: 0, answers };
      const made = { key: crypto.randomUUID(), madeBy: me, itemId: id, tag: itemTag, body };
      return { ...made, outcome: 'fit', failed: [], sending: 'waiting' };
    }, tag);
    await page.goto(`${server.address}/assets/phone.css`); // of the same origin, and holds nothing open
    await page.evaluate(leaveOlderStore, check);
    await page.goto(`${server.address}/phone`);
    await page.locator('.progress').waitFor();
    await expect.poll(() => recordedChecks(server.address), { timeout: 20_000 }).toEqual([tags[0], tag]);
    await openItem(page, tags[4] ?? '');
    await good(0).check();
    await expect.poll(() => begunCount(page)).toBe(1);
  });
});

async function openPage(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  await page.goto(`${address}/phone`);
  await page.locator('.progress').waitFor();
  return page;
}

/** Puts the store as version 1 of the page laid it out in place of what is there, with one check that waits. */
function leaveOlderStore(check: object): Promise<void> {
  return new Promise((done, fail) => {
    indexedDB.deleteDatabase('tackleroom-phone').onsuccess = () => {
      const opening = indexedDB.open('tackleroom-phone', 1);
      opening.onerror = () => fail(opening.error ?? new Error('not opened'));
      opening.onupgradeneeded = () => {
        for (const name of ['checks', 'photos'])
          opening.result.createObjectStore(name, { keyPath: 'seq', autoIncrement: true });
        opening.result.createObjectStore('bundles', { keyPath: 'id' });
        opening.result.createObjectStore('things');
      };
      opening.onsuccess = () => {
        const change = opening.result.transaction('checks', 'readwrite');
        change.objectStore('checks').add(check);
        change.oncomplete = () => {
          opening.result.close();
          done();
        };
      };
    };
  });
}

/** Ends every process of the browser at once, as when the battery dies. */
async function killBrowser(context: BrowserContext): Promise<void> {
  const gone = new Promise((resolve) => context.once('close', resolve));
  const tools = await context.browser()?.newBrowserCDPSession();
  const processes = await tools?.send('SystemInfo.getProcessInfo');
  const main = processes?.processInfo.find(({ type }) => type === 'browser');
  if (!main) throw new Error('The browser does not say which process it is.');
  process.kill(main.id, 'SIGKILL');
  await gone;
}

/** Waits until words that were entered are in the store of the page. */
async function kept(page: Page, words: string): Promise<void> {
  await expect.poll(async () => JSON.stringify(await begunIn(page))).toContain(words);
}

async function begunCount(page: Page): Promise<number> {
  return (await begunIn(page)).length;
}

function begunIn(page: Page): Promise<readonly unknown[]> {
  return page.evaluate(
    () =>
      new Promise<unknown[]>((give, fail) => {
        const opening = indexedDB.open('tackleroom-phone');
        opening.onerror = () => fail(opening.error ?? new Error('not opened'));
        opening.onsuccess = () => {
          const reading = opening.result.transaction('begun').objectStore('begun').getAll();
          reading.onsuccess = () => {
            opening.result.close();
            give(reading.result);
          };
        };
      }),
  );
}
