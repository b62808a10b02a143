import { describe, expect, it } from 'vitest';
import type { DiaryEntry, DiaryJob } from '../../src/reminders/diary/diary-entry.js';
import type { Overview, PlannedVisit } from '../../src/reminders/diary/diary-overview.service.js';
import { diaryPage } from '../../src/reminders/diary/diary.view.js';
import { toDay } from '../../src/rules/calendar/day.js';

const TODAY = toDay('2027-05-03');
const VISIT_DAY = toDay('2027-05-12');

function entry(itemId: number, more: Partial<DiaryEntry> = {}): DiaryEntry {
  return {
    ...{ itemId, tag: `SL-${itemId}`, kind: 'sling', storeId: 1, storeName: 'North store', today: TODAY },
    ...{ dueOn: VISIT_DAY, overdue: false, who: 'competentPerson', jobs: [], stops: [] },
    reasons: [{ why: 'inspection', type: 'thoroughExamination', dueOn: VISIT_DAY, source: 'x' }],
    ...more,
  };
}

function visit(entries: readonly DiaryEntry[], more: Partial<PlannedVisit> = {}): PlannedVisit {
  return {
    ...{
      storeId: 1,
      storeName: 'North store',
      on: VISIT_DAY,
      who: 'competentPerson',
      entries,
      savesJobs: [],
    },
    ...more,
  };
}

function shown(entries: readonly DiaryEntry[], more: Partial<Overview>): string {
  const overview: Overview = {
    ...{ today: TODAY, through: toDay('2027-08-03'), stores: [], storeId: undefined, monthsAhead: 3 },
    ...{ visits: [], notAtStore: [], weeks: [], catchingUp: 0, entries, overdue: 0 },
    ...more,
  };
  const me = { id: 1, name: 'Ines Okonjo', roles: ['storeman' as const] };
  return diaryPage({ me, overview, kinds: [], warnings: [] });
}

/** What is read, without the marks of HTML. */
const words = (html: string): string => html.replace(/<[^>]*>/g, '').replace(/\s+/g, ' ');

describe('the page of the due diary', () => {
  it('says of a visit what it clears and every job that it saves', () => {
    const entries = Array.from({ length: 23 }, (_, n) => entry(n + 1));
    const savesJobs = [
      { jobId: 4, reference: 'LM-1' },
      { jobId: 7, reference: 'LM-2' },
    ];
    const text = words(shown(entries, { visits: [visit(entries, { savesJobs })] }));
    expect(text).toContain(
      'A competent person at North store on 12 May 2027 clears 23 items and saves jobs LM-1 and LM-2',
    );
  });

  it('asks for the first day on which someone can come where there is no time to lose', () => {
    const entries = [entry(1, { overdue: true })];
    const text = words(shown(entries, { visits: [visit(entries, { on: TODAY, who: 'inspector' })] }));
    expect(text).toContain(
      'An inspector at North store today, 3 May 2027, or as soon as one can come, clears 1 item',
    );
  });

  it('says whose diary it is and of which day, for whom it lies printed before', () => {
    expect(words(shown([], {}))).toContain('Every store, 3 May 2027');
    const store = { id: 5, name: 'South store', address: '', scheme: 'gb', timeZone: 'UTC', version: 1 };
    expect(words(shown([], { stores: [store], storeId: 5 }))).toContain('South store, 3 May 2027');
  });

  it('stays a page that loads with 10,000 items, and says how many it leaves out', () => {
    const entries = Array.from({ length: 10_000 }, (_, n) => entry(n + 1));
    const html = shown(entries, { visits: [visit(entries)], notAtStore: entries });
    expect(words(html)).toContain('clears 10000 items');
    expect(words(html).match(/and 9800 more items/g)).toHaveLength(2);
    expect(words(html)).toContain('The first 500 of 10000 items are listed.');
    expect(html.match(/href="\/register\/1"/g)).toHaveLength(3);
    expect(html.length).toBeLessThan(500_000);
  });

  it('names each thing to do once, though two rules ask for it', () => {
    const [reason] = entry(1).reasons;
    const twice = entry(1, { reasons: reason ? [reason, { ...reason, source: 'y' } as typeof reason] : [] });
    expect(words(shown([twice], {})).match(/thorough examination, due 12 May 2027/g)).toHaveLength(1);
  });

  it('tells what to do of each job that is out or to come', () => {
    const job = (out: boolean): DiaryJob => ({
      ...{ jobId: 4, reference: 'LM-4', out },
      from: toDay('2027-05-10'),
      to: toDay('2027-05-20'),
    });
    const stopped = (out: boolean) => [entry(1, { jobs: [job(out)], stops: [job(out)] })];
    expect(words(shown(stopped(true), {}))).toContain('out past its day: exchange it by 12 May 2027');
    expect(words(shown(stopped(false), {}))).toContain('from 10 May 2027: have it examined before');
  });
});
