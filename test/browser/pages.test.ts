import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import type { Role } from '../../src/people/role.js';
import { examination } from '../support/example-examination.js';
import { addDays, toDay } from '../../src/rules/calendar/day.js';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';

const accountOf = (role: Role) => DEMO_ACCOUNTS.find(({ roles }) => roles.includes(role));

const PAGES = [
  '/',
  '/stores',
  '/stores/1',
  '/stores/1/reminders',
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
  '/diary',
  '/diary?storeId=1&monthsAhead=12',
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
  '/people/mail',
  '/people/2/mail',
  '/me/mail',
  '/outbox',
  '/outbox/1',
  '/mailbox',
  '/mailbox/1',
  '/ledger',
  '/ledger/check',
];

// Accessibility by axe-core, an engine that is not ours, against WCAG 2.2 at levels A and AA.
describe('every page of the demo', () => {
  let server: BuiltServer;
  let browser: Browser;
  let page: Page;
  let examinersPage: Page;
  const errors: string[] = [];

  beforeAll(async () => {
    server = await startBuiltServer({ demo: true });
    browser = await launchBrowser();
    page = await signedIn('manager');
    examinersPage = await signedIn('competentPerson');
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
  });

  /** A page of a person with this role. */
  async function signedIn(role: Role): Promise<Page> {
    const account = accountOf(role);
    const fresh = await (await browser.newContext()).newPage();
    fresh.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
    fresh.on('pageerror', (error) => errors.push(error.message));
    await fresh.goto(`${server.address}/sign-in`);
    await fresh.getByLabel('Sign-in name').fill(account?.signInName ?? '');
    await fresh.getByLabel('Password').fill(account?.password ?? '');
    await fresh.getByRole('button', { name: 'Sign in' }).click();
    await fresh.waitForURL(`${server.address}/`);
    return fresh;
  }

  /** Expects that the page which `open` opens fits both widths and offends neither axe nor the console. */
  async function expectSound(open: () => Promise<void>, on = page): Promise<void> {
    for (const width of [390, 1280]) {
      await on.setViewportSize({ width, height: 900 });
      await open();
      expect(await on.getByRole('heading', { level: 1 }).count()).toBe(1);
      const overflow = await on.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(overflow, `sticks out at ${width} px`).toBeLessThanOrEqual(0);
    }
    // The frame of a mail runs no script, so that axe would wait for it in vain.
    await on.evaluate(() =>
      document.querySelectorAll('iframe[sandbox=""][title]').forEach((frame) => frame.remove()),
    );
    const { violations } = await new AxeBuilder({ page: on })
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

  async function expectSoundForExaminer(path: string): Promise<void> {
    await expectSound(async () => {
      const answer = await examinersPage.goto(server.address + path);
      expect(answer?.status()).toBe(200);
    }, examinersPage);
  }

  it('shows the competent person the form of a report as soundly, and the report once it is signed', async () => {
    await expectSoundForExaminer('/register/1/examination');
    const call = examinersPage.request;
    const { tag } = await (await call.get(`${server.address}/api/items/1`)).json();
    const { today } = await (await call.get(`${server.address}/api/items/1/due`)).json();
    const day = toDay(String(today));
    const data = examination(String(tag), day, { nextExaminationBy: addDays(day, 180) });
    const signed = await call.post(`${server.address}/api/items/1/examinations`, { data });
    expect(signed.status(), await signed.text()).toBe(201);
    const [record] = await (await call.get(`${server.address}/api/items/1/inspections`)).json();
    await expectSoundForExaminer(`/examinations/${record.examinationId}`);
  });

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
