import { AxeBuilder } from '@axe-core/playwright';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { ApiClient } from '../support/api-client.js';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import {
  answerGood,
  checkItem,
  giveBigPhoto,
  holdLabelUp,
  openItem,
  openPhone,
  saveCheck,
} from '../support/phone-page.js';

/** A check as the history has it. */
interface Recorded {
  readonly tag: string;
  readonly actor: string;
}

function account(signInName: string) {
  const found = DEMO_ACCOUNTS.find((each) => each.signInName === signInName);
  if (!found) throw new Error(`There is no demo account ${signInName}.`);
  return { signInName: found.signInName, password: found.password };
}

const CHECKS = '**/api/items/*/checks';

// A crew in a hall without a signal, on the built server in a real browser: what it saves arrives once, whatever happens.
describe('the phone page', () => {
  let first: BuiltServer;
  let again: BuiltServer | undefined;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let manager: ApiClient;
  let tags: readonly string[];

  beforeAll(async () => {
    first = await startBuiltServer({ demo: true });
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    manager = await ApiClient.signIn(first.address, account('piet'));
    page = await openPhone(context, first.address, account('tomas'));
    const straps = page.locator('.group', { hasText: /Ratchet straps|Safety lines/ });
    tags = (await straps.locator('.tile-plain .tile-name').allInnerTexts()).slice(0, 12);
  });
  afterAll(async () => {
    await browser.close();
    await again?.stop();
    await first.stop();
  });

  const press = (name: string) => page.getByRole('button', { name }).first().click();
  const content = () => page.locator('main').innerText();
  const status = () => page.locator('.send-bar').innerText();

  async function recorded(): Promise<readonly Recorded[]> {
    const entries =
      await manager.get<{ action: string; actorName: string; detail: { tag: string } }[]>('/api/ledger');
    return entries
      .filter(({ action }) => action === 'check.recorded')
      .map(({ actorName, detail }) => ({ tag: detail.tag, actor: actorName }))
      .reverse();
  }

  async function expectSound(): Promise<void> {
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow, 'sticks out at 390 px').toBeLessThanOrEqual(0);
    // The issue asks for targets of 48 px.
    const small = await page
      .locator(
        'button:visible, a:not(p:not(.crumbs, [role=status]) a):visible, .verdict:visible, summary:visible',
      )
      .evaluateAll((all) =>
        all.filter((each) => each.getBoundingClientRect().height < 48).map((each) => each.outerHTML),
      );
    expect(small).toEqual([]);
  }

  it('saves twelve checks with no signal, one failed with a photo, and blocks the failed strap at once', async () => {
    await context.setOffline(true);
    for (const tag of tags.slice(0, 11)) await checkItem(page, tag);
    await openItem(page, tags[11] ?? '');
    await answerGood(page);
    await page.getByRole('radio', { name: 'Bad' }).nth(1).check();
    const bigBytes = await giveBigPhoto(page);
    await page.getByAltText('The photo as it will be sent').waitFor();
    const size = await page
      .locator('figure img')
      .evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight]);
    expect(size).toEqual([1600, 1200]);
    expect(bigBytes).toBeGreaterThan(8_000_000);
    await expectSound();
    await saveCheck(page);
    expect(await content()).toContain(`${tags[11]} failed: do not use it.`);
    expect(await status()).toContain('12 checks and 1 photo wait to be sent');
    await expectSound();
    await openItem(page, tags[11] ?? '');
    expect(await content()).toContain('Do not use');
    expect(await page.getByRole('radio').count()).toBe(0);
    await expectSound();
    expect(await recorded()).toEqual([]);
  });

  it('opens with no signal after it was closed, and still has everything', async () => {
    await page.close();
    page = await context.newPage();
    page.setDefaultTimeout(10_000);
    await page.goto(`${first.address}/phone`);
    await page.locator('.progress').waitFor();
    expect(await status()).toContain('12 checks and 1 photo wait to be sent');
    await expectSound();
    await page.goto(`${first.address}/phone#/waiting`);
    await page.getByText('Waits to be sent (13)').waitFor();
    await expectSound();
  });

  it('sends each once and in order though an answer is lost and the server is killed on the way', async () => {
    let posts = 0;
    await context.route(CHECKS, async (route) => {
      posts += 1;
      if (posts !== 3 && posts !== 6) return route.continue();
      await route.fetch(); // the server has taken it, and the phone does not hear of it
      if (posts === 6) first.process.kill('SIGKILL');
      return route.abort();
    });
    await context.setOffline(false);
    await press('Send now');
    await page.getByText('kept on this phone and goes out by itself').waitFor();
    await page.getByRole('button', { name: 'Send now' }).waitFor();
    await page.getByText('Waits to be sent (11)').waitFor();
    await page.locator('.send-bar button:enabled').click();
    await expect.poll(() => first.process.signalCode, { timeout: 20_000 }).toBe('SIGKILL');
    const dataDir = join(first.dataDir, 'demo'); // where the demo keeps its data
    again = await startBuiltServer({ dataDir, port: Number(new URL(first.address).port) });
    await page.locator('.send-bar button:enabled').click();
    await expect.poll(status, { timeout: 30_000 }).toContain('All sent at');
    await context.unroute(CHECKS);
    expect(posts).toBeGreaterThanOrEqual(14);
    expect(await recorded()).toEqual(tags.map((tag) => ({ tag, actor: 'Tomas Vell' })));
  }, 90_000);

  it('has put the failed strap out of use for everyone, its photo with it', async () => {
    const found = await manager.get<{ items: { id: number; condition: string }[] }>(
      `/api/items?text=${tags[11]}`,
    );
    const [strap] = found.items;
    expect(strap?.condition).toBe('quarantined');
    const documents = await manager.get<{ mediaType: string; sizeBytes: number; defectId: number | null }[]>(
      `/api/items/${strap?.id}/documents`,
    );
    expect(documents).toMatchObject([{ mediaType: 'image/jpeg', defectId: expect.any(Number) }]);
    await page.goto(`${first.address}/phone#/jobs/2`);
    await page.getByText('11 of 61 items checked').waitFor();
  });

  it('keeps a check that the server refuses, says why, and goes on with the next', async () => {
    await context.setOffline(true);
    const [refused = '', taken = ''] = await page.locator('.tile-plain .tile-name').allInnerTexts();
    await checkItem(page, refused);
    await checkItem(page, taken);
    let posts = 0;
    await context.route(CHECKS, async (route) => {
      posts += 1;
      if (posts > 1) return route.continue();
      const problem = {
        code: 'not_allowed_now',
        title: 'That cannot be done as things stand.',
        detail: 'It was scrapped.',
      };
      return route.fulfill({
        status: 409,
        contentType: 'application/problem+json',
        body: JSON.stringify(problem),
      });
    });
    await context.setOffline(false);
    // The refusal shows while the next is still on its way: wait for both.
    await expect.poll(status, { timeout: 15_000 }).toMatch(/^The rest sent at [\s\S]*1 to look at/);
    await context.unroute(CHECKS);
    expect((await recorded()).at(-1)?.tag).toBe(taken);
    await page.goto(`${first.address}/phone#/waiting`);
    await page.getByText('It was scrapped.').waitFor();
    await expectSound();
    await press('Try again');
    await page.getByRole('button', { name: 'Send now' }).click();
    await expect.poll(async () => (await recorded()).at(-1)?.tag).toBe(refused);
  });

  it('refuses a file that lies about its type, and a photo that it cannot read, in words', async () => {
    await page.goto(`${first.address}/phone#/jobs/2`);
    await page.locator('.tile-plain').first().click();
    await page.getByRole('radio', { name: 'Bad' }).first().check();
    const photo = page.locator('input[type=file]').first();
    await photo.setInputFiles({
      name: 'crack.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('%PDF-1.7 not a photo'),
    });
    await page.getByText("'crack.jpg' is not a photo").waitFor();
    const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic\0\0\0\0mif1heic')]);
    await photo.setInputFiles({ name: 'IMG.HEIC', mimeType: 'image/heic', buffer: heic });
    await page.getByText('is a HEIC photo, which this browser cannot read').waitFor();
    expect(await page.locator('figure').count()).toBe(0);
  });

  it('reads the QR code of a label with the decoder it brings along, without a signal', async () => {
    await context.setOffline(true);
    await page.goto(`${first.address}/phone#/jobs/2`);
    await page.locator('.progress').waitFor();
    await holdLabelUp(page, `http://gear.example/t/${tags[0]}`);
    await press('Scan the label');
    await page.getByRole('heading', { level: 1, name: tags[0] ?? '' }).waitFor();
    await context.setOffline(false);
    expect(await page.getByRole('radio').count()).toBeGreaterThan(0);
  });

  it('sends nothing under the name of someone else, and goes on once the right one has signed in again', async () => {
    const before = await recorded();
    await page.goto(`${first.address}/phone#/jobs/2`);
    await context.setOffline(true);
    await checkItem(page, tags[0] ?? '');
    await context.clearCookies(); // before the signal is back, for the page sends by itself then
    await context.setOffline(false);
    await page.getByText('You are signed out.').waitFor();
    await openPhone(context, first.address, account('agnes')).then((other) => other.close());
    await press('Send now');
    await page.getByText('Saved by Tomas Vell').waitFor();
    expect(await recorded()).toEqual(before);
    const his = await openPhone(context, first.address, account('tomas'));
    await his.getByText('All sent at').waitFor();
    expect(await recorded()).toEqual([...before, { tag: tags[0], actor: 'Tomas Vell' }]);
  });
});
