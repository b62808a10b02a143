import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';

const MANAGER = DEMO_ACCOUNTS.find(({ roles }) => roles.includes('manager'));

const PAGES = [
  '/',
  '/stores',
  '/stores/1',
  '/register',
  '/register?kind=ratchetStrap&currency=outOfDate',
  '/register/1',
  '/register/new',
  '/register/1/edit',
  '/register/import',
  '/register/1/check',
  '/register/1/documents',
  '/labels',
  '/labels/sheets?kind=panelLifter',
  '/quarantine',
  '/jobs',
  '/jobs/new',
  '/jobs/1',
  '/jobs/2',
  '/jobs/3',
  '/jobs/3/edit',
  '/jobs/3/plan',
  '/jobs/4/plan',
  '/jobs/3/calculation',
  '/jobs/6/calculation',
  '/jobs/2/checks',
  '/jobs/2/use',
  '/jobs/2/gear-file',
  '/jobs/2/hand-out',
  '/jobs/2/bring-back',
  '/rules',
  '/people',
  '/ledger',
  '/ledger/check',
];

// Accessibility by axe-core, an engine that is not ours, against WCAG 2.2 at levels A and AA.
describe('every page of the demo', () => {
  let server: BuiltServer;
  let browser: Browser;
  let page: Page;
  const errors: string[] = [];

  beforeAll(async () => {
    server = await startBuiltServer({ demo: true });
    browser = await launchBrowser();
    page = await (await browser.newContext()).newPage();
    page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(`${server.address}/sign-in`);
    await page.getByLabel('Sign-in name').fill(MANAGER?.signInName ?? '');
    await page.getByLabel('Password').fill(MANAGER?.password ?? '');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL(`${server.address}/`);
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
  });

  /** Expects that the page which `open` opens fits both widths and offends neither axe nor the console. */
  async function expectSound(open: () => Promise<void>): Promise<void> {
    for (const width of [390, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      await open();
      expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(overflow, `sticks out at ${width} px`).toBeLessThanOrEqual(0);
    }
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    expect(errors).toEqual([]);
  }

  it.each(PAGES)(
    '%s fits a phone and a desk, has a heading, and offends neither axe nor the console',
    async (path) => {
      await expectSound(async () => {
        const answer = await page.goto(server.address + path);
        expect(answer?.status()).toBe(200);
      });
    },
  );

  it('shows what a change would do above the form, and then saves what was typed', async () => {
    await expectSound(async () => {
      await page.goto(`${server.address}/jobs/3/edit`);
      await page.locator('[name="panels[0].massKg"]').fill('900');
      await page.getByRole('button', { name: 'See what would change' }).click();
      await page.waitForURL('**/jobs/3/what-if');
      expect(await page.getByRole('heading', { name: 'What would change' }).count()).toBe(1);
      expect(await page.getByRole('table', { name: 'Gear lines that change' }).count()).toBe(1);
    });
    expect(await page.locator('[name="panels[0].massKg"]').inputValue()).toBe('900');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await page.waitForURL(`${server.address}/jobs/3`);
  });
});
