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
  '/jobs',
  '/jobs/new',
  '/jobs/1',
  '/jobs/2',
  '/jobs/3',
  '/jobs/3/edit',
  '/jobs/3/plan',
  '/jobs/4/plan',
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

  it.each(PAGES)(
    '%s fits a phone and a desk, has a heading, and offends neither axe nor the console',
    async (path) => {
      for (const width of [390, 1280]) {
        await page.setViewportSize({ width, height: 900 });
        const answer = await page.goto(server.address + path);
        expect(answer?.status()).toBe(200);
        expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
        const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(overflow, `sticks out at ${width} px`).toBeLessThanOrEqual(0);
      }
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
        .analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
      expect(errors).toEqual([]);
    },
  );
});
