import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import {
  answerGood,
  checkItem,
  CREW,
  openItem,
  openPhone,
  recordedChecks,
  tagsToCheck,
} from '../support/phone-page.js';

const OTHER = DEMO_ACCOUNTS.find(({ signInName }) => signInName === 'agnes');

// One phone, handed on: each check goes out under the name of whoever made it, and the name is in sight.
describe('a phone that two people share', () => {
  let server: BuiltServer;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let tags: readonly string[];

  beforeAll(async () => {
    server = await startBuiltServer({ demo: true });
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    page = await openPhone(context, server.address, CREW);
    tags = await tagsToCheck(page, 'Ratchet straps');
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
  });

  it('says on the list, on the checklist and beside what waits who checks', async () => {
    const name = page.getByText('You: Tomas Vell');
    await name.waitFor();
    await openItem(page, tags[0] ?? '');
    await name.waitFor();
    await page.goto(`${server.address}/phone#/waiting`);
    await page.getByText('Checks are saved under the name of Tomas Vell.').waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
  });

  it('takes the next one’s name as soon as that one has signed in, wherever the page is opened', async () => {
    await page.goto(`${server.address}/sign-in`);
    await page.getByLabel('Sign-in name').fill(OTHER?.signInName ?? '');
    await page.getByLabel('Password').fill(OTHER?.password ?? '');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL(`${server.address}/`);
    await page.goto(`${server.address}/phone#/jobs/2`);
    await page.getByText(`You: ${OTHER?.name}`).waitFor();
    await checkItem(page, tags[0] ?? '');
    await page.getByText('All sent at').waitFor();
    expect(await recordedChecks(server.address)).toEqual([tags[0]]);
    await page.getByRole('link', { name: /All sent at/ }).click();
    await page.getByText(`by ${OTHER?.name}`).waitFor();
  });

  it('offers for the next length the unit that was chosen for the last one', async () => {
    await page.goto(`${server.address}/phone#/jobs/2`);
    await openItem(page, tags[1] ?? '');
    await answerGood(page);
    await page.getByText('Measured it?').first().click();
    await page.getByLabel('Unit of length of the cut').selectOption('in');
    expect(await page.getByLabel('Unit of width of the webbing').inputValue()).toBe('in');
    await page.getByLabel('length of the cut', { exact: true }).fill('1/4');
    await page.getByLabel('width of the webbing', { exact: true }).fill('2');
    await page.getByRole('button', { name: 'Save the check' }).click();
    await page.getByText(`${tags[1]} failed: do not use it.`).waitFor();
  });

  it('never guesses what a tag that is easily misread means', async () => {
    await page.getByLabel('or type the tag').fill(`${tags[2]}`.replace('0', 'o'));
    await page.getByRole('button', { name: 'Open' }).click();
    await page.getByText('is easily misread').waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.locator('.note .tile', { hasText: tags[2] ?? '' }).click();
    await page.getByRole('heading', { level: 1, name: tags[2] ?? '' }).waitFor();
  });
});
