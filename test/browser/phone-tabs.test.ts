import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import { checkItem, CREW, openPhone, recordedChecks, tagsToCheck } from '../support/phone-page.js';

const CHECKS = '**/api/items/*/checks';

// Two tabs of one browser share what is saved, and either may be the one that sends.
describe('two tabs of the phone page', () => {
  let server: BuiltServer;
  let browser: Browser;
  let context: BrowserContext;
  let one: Page;
  let other: Page;
  let tags: readonly string[];

  beforeAll(async () => {
    server = await startBuiltServer({ demo: true });
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    one = await openPhone(context, server.address, CREW);
    tags = await tagsToCheck(one, 'Ratchet straps');
    other = await context.newPage();
    other.setDefaultTimeout(10_000);
    await other.goto(`${server.address}/phone`);
    await other.locator('.progress').waitFor();
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
  });

  const status = (page: Page) => page.locator('.send-bar').innerText();
  const pressSend = (page: Page) => page.locator('.send-bar button:enabled').click();

  it('show at once what the other saved, and send each check once though both send', async () => {
    await context.setOffline(true);
    for (const [index, tag] of tags.slice(0, 6).entries()) await checkItem(index % 2 ? other : one, tag);
    await expect.poll(() => status(one)).toContain('6 checks wait to be sent');
    await expect.poll(() => status(other)).toContain('6 checks wait to be sent');
    const posted: string[] = [];
    await context.route(CHECKS, async (route) => {
      posted.push(route.request().headers()['idempotency-key'] ?? '');
      await route.continue();
    });
    await context.setOffline(false); // either goes by itself on this
    await Promise.allSettled([pressSend(one), pressSend(other)]);
    await expect.poll(() => status(one), { timeout: 20_000 }).toContain('All sent at');
    await expect.poll(() => status(other)).toContain('All sent at');
    await context.unroute(CHECKS);
    expect(new Set(posted).size).toBe(6);
    expect(posted, 'a key was posted twice: both tabs were sending').toHaveLength(6);
    expect(await recordedChecks(server.address)).toEqual(tags.slice(0, 6));
  });

  it('wait while one is sending, and go on with the rest when that one is closed on the way', async () => {
    const before = await recordedChecks(server.address);
    const mine = tags.slice(6, 9);
    await other.close();
    await context.setOffline(true);
    for (const tag of mine) await checkItem(one, tag);
    // The server takes the first check, and the answer never comes.
    let posts = 0;
    await context.route(CHECKS, async (route) => {
      posts += 1;
      if (posts > 1) return route.continue();
      await route.fetch();
    });
    await context.setOffline(false);
    await expect.poll(() => posts, { timeout: 20_000 }).toBe(1);
    other = await context.newPage();
    other.setDefaultTimeout(10_000);
    await other.goto(`${server.address}/phone`);
    await pressSend(other);
    await other.locator('.send-bar button:enabled').waitFor();
    expect(posts, 'the other sent while the first was at it').toBe(1);
    expect(await status(other)).toContain('3 checks wait to be sent');
    await one.close();
    await pressSend(other);
    await expect.poll(() => status(other), { timeout: 20_000 }).toContain('All sent at');
    await context.unroute(CHECKS);
    expect(posts).toBe(4);
    expect(await recordedChecks(server.address)).toEqual([...before, ...mine]);
  });

  it('ask about what the other began, and forget it there when it is saved', async () => {
    const [tag = ''] = await tagsToCheck(other, 'Safety lines');
    const again = await context.newPage();
    again.setDefaultTimeout(10_000);
    await again.goto(`${server.address}/phone`);
    await again.locator('.progress').waitFor();
    const tile = again.locator('.tile', { hasText: tag });
    await tile.click();
    await again.getByRole('radio', { name: 'Good' }).first().check();
    await again.getByRole('link', { name: 'Gear of the job' }).click();
    await expect.poll(() => other.locator('.tile', { hasText: tag }).innerText()).toContain('begun');
    await other.locator('.tile', { hasText: tag }).click();
    await other.getByRole('button', { name: 'Go on' }).click();
    for (const good of await other.getByRole('radio', { name: 'Good' }).all()) await good.check();
    await other.getByRole('button', { name: 'Save the check' }).click();
    await expect.poll(() => tile.innerText()).toContain('passed');
    await tile.click();
    await again.getByRole('radio').first().waitFor();
    expect(await again.getByText('You began to check').count()).toBe(0);
  });
});
