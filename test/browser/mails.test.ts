import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { digestContent } from '../../src/reminders/digest/digest-model.js';
import { mailHtml } from '../../src/reminders/mails/mail-html.js';
import { outboxPage } from '../../src/reminders/outbox/outbox.view.js';
import { urgentMatters } from '../../src/reminders/urgent/urgent-matter.js';
import { urgentContent } from '../../src/reminders/urgent/urgent-model.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { launchBrowser } from '../support/browser.js';
import { ADDRESS, TODAY, diaryEntry, digestFacts, told, unfitBooking } from '../support/example-mails.js';

const job = { jobId: 7, reference: 'LM-7', from: addDays(TODAY, -4), to: addDays(TODAY, 5), out: true };
const promised = {
  ...job,
  jobId: 8,
  reference: 'LM-8',
  from: addDays(TODAY, 8),
  to: addDays(TODAY, 12),
  out: false,
};

/** Every part that a digest can have, a list that is cut, and a tag without a place to break it at. */
const DIGEST = mailHtml(
  digestContent(
    digestFacts([
      told(diaryEntry(1, -2, { jobs: [job], stops: [job], tag: 'X'.repeat(60) })),
      told(diaryEntry(2, -1)),
      told(diaryEntry(3, -20), false),
      told(diaryEntry(4, 10, { jobs: [promised], stops: [promised] })),
      ...Array.from({ length: 40 }, (_, index) => told(diaryEntry(100 + index, 12))),
    ]),
  ),
);

const URGENT = mailHtml(
  urgentContent({
    matters: urgentMatters(
      [
        {
          id: 1,
          kind: 'immediateDanger',
          storeId: 1,
          item: { id: 5, tag: 'PL-5', kind: 'panelLifter' },
          batch: null,
          what: 'crack'.repeat(30),
          by: 'Crew One',
          raisedAt: '2027-05-03T08:00:00.000Z',
          lastDayOfUse: null,
          settled: false,
        },
      ],
      [5, 6].map((itemId) => ({ booking: unfitBooking(itemId), key: `${itemId}`, replacement: undefined })),
    ),
    personName: 'Storeman One',
    kindName: () => 'Panel lifter',
    address: ADDRESS,
  }),
);

// Accessibility by axe-core, an engine that is not ours, against WCAG 2.2 at levels A and AA.
describe('a mail shown by a browser', () => {
  let browser: Browser;
  beforeAll(async () => void (browser = await launchBrowser()));
  afterAll(() => browser.close());

  const SHOWN = [
    [390, 'light'],
    [390, 'dark'],
    [700, 'light'],
  ] as const;

  it.each([
    ['a digest', DIGEST],
    ['an urgent mail', URGENT],
  ])('%s fits a phone, loads nothing and offends axe neither by day nor by night', async (_, html) => {
    for (const [width, colorScheme] of SHOWN) {
      const context = await browser.newContext({ viewport: { width, height: 844 }, colorScheme });
      const page = await context.newPage();
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.setContent(html);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        .analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
      expect(asked).toEqual([]);
      const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
      expect(paper).toBe(colorScheme === 'dark' ? 'rgb(27, 26, 23)' : 'rgb(251, 248, 241)');
      await context.close();
    }
  });

  it('that was given up fits the page of the outbox, however long its words are', async () => {
    const mail = {
      ...({
        id: 1,
        messageId: '<1@yard.example>',
        state: 'dead',
        fault: 'addressRefused',
        tries: 1,
      } as const),
      ...{ toName: 'N'.repeat(120), toAddress: `${'a'.repeat(64)}@yard.example`, subject: 'S'.repeat(200) },
      ...{ decidedAt: '2027-05-03T08:00:00.000Z', settledAt: '2027-05-03T08:00:00.000Z', nextTryAt: null },
      lastAnswer: `550 ${'z'.repeat(490)}`,
    };
    const [none, pile] = [
      { total: 0, mails: [] },
      { total: 3, mails: [mail, { ...mail, id: 2 }, { ...mail, id: 3 }] },
    ];
    const html = outboxPage({
      me: { id: 1, name: 'Manager One', roles: ['manager'] },
      box: { open: true, dead: pile, waiting: none, settled: pile },
      demo: false,
    });
    for (const width of [390, 1280]) {
      const page = await browser.newPage({ viewport: { width, height: 844 } });
      await page.setContent(html);
      await page.addStyleTag({ path: 'src/web/assets/style.css' });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      await page.close();
    }
  });
});
