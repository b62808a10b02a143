import { describe, expect, it } from 'vitest';
import { digestContent } from '../../src/reminders/digest/digest-model.js';
import { cutShort, fittingSubject } from '../../src/reminders/mails/mail-content.js';
import { mailHtml } from '../../src/reminders/mails/mail-html.js';
import { mailText } from '../../src/reminders/mails/mail-text.js';
import { urgentMatters } from '../../src/reminders/urgent/urgent-matter.js';
import { urgentContent } from '../../src/reminders/urgent/urgent-model.js';
import { addDays } from '../../src/rules/calendar/day.js';
import {
  ADDRESS,
  TODAY,
  diaryEntry,
  digestFacts,
  tellingStore,
  told,
  unfitBooking,
} from '../support/example-mails.js';

const job = (reference: string, out: boolean, [from, to]: readonly [number, number]) => ({
  jobId: 7,
  reference,
  from: addDays(TODAY, from),
  to: addDays(TODAY, to),
  out,
});

const titles = (content: ReturnType<typeof digestContent>) => content.sections.map(({ title }) => title);

describe('a digest', () => {
  it('puts first what is overdue on a job, and last what was told before', () => {
    const out = job('LM-7', true, [-4, 5]);
    const content = digestContent(
      digestFacts([
        told(diaryEntry(1, -2, { jobs: [out], stops: [out] })),
        told(diaryEntry(2, -1)),
        told(diaryEntry(3, -20), false),
        told(diaryEntry(4, 2)),
      ]),
    );
    expect(titles(content)).toEqual([
      'Overdue and out on a job: 1',
      'Overdue in store: 1',
      'Next visit to North store: a competent person',
      'Still overdue in store: 1',
    ]);
    expect(content.subject).toBe(
      '1 overdue out on a job, 1 newly overdue in store, 1 due by 5 May, 1 still overdue in store',
    );
    expect(content.sections.map(({ grave }) => grave)).toEqual([true, true, false, true]);
  });

  it('says in full again what is overdue and stops a job', () => {
    const promised = job('LM-9', false, [3, 8]);
    const content = digestContent(
      digestFacts([told(diaryEntry(1, -20, { jobs: [promised], stops: [promised] }), false)]),
    );
    expect(content.subject).toBe('PL-1 overdue in store, job LM-9 at stake');
    expect(content.sections[0]?.entries[0]?.links).toEqual([
      { text: 'See what could take its place on job LM-9', href: `${ADDRESS}/jobs/7` },
    ]);
    expect(content.sections[0]?.entries[0]?.sentences).toEqual([
      'Its thorough examination was due on 13 April, 20 days ago.',
      'Stops job LM-9, 6 May to 11 May.',
    ]);
  });

  it('groups what falls due by the visit that clears it, and says what that saves', () => {
    const promised = job('LM-9', false, [8, 12]);
    const content = digestContent(
      digestFacts([
        told(diaryEntry(1, 10, { jobs: [promised], stops: [promised] })),
        told(diaryEntry(2, 9)),
        told(diaryEntry(3, 60)),
      ]),
    );
    // The job begins on Tuesday 11 May: Monday 10 May is the last day before it.
    expect(titles(content)[0]).toBe('By 10 May at North store: a competent person');
    expect(content.sections[0]?.lead).toBe('One visit clears 2 items and saves job LM-9.');
    expect(titles(content)[1]).toBe('By 2 July at North store: a competent person');
    expect(content.subject).toBe('3 due by 2 July, job LM-9 at stake');
  });

  it('counts with a visit what it clears beside what is told of', () => {
    const facts = digestFacts([told(diaryEntry(1, 7))], { others: [diaryEntry(2, 8), diaryEntry(3, 9)] });
    expect(digestContent(facts).sections[0]?.lead).toBe(
      'One visit clears 3 items: this one, and 2 more in the diary.',
    );
  });

  it('says of gear out until it is due that no visit reaches it', () => {
    const out = job('LM-7', true, [-4, 20]);
    const content = digestContent(digestFacts([told(diaryEntry(1, 7, { jobs: [out], stops: [out] }))]));
    expect(titles(content)).toEqual(['Falling due while out: 1']);
    expect(content.sections[0]?.entries[0]?.sentences).toContain(
      'Out on job LM-7 until 23 May, past its due day.',
    );
  });

  it('says so when a visit comes only after the due day', () => {
    // Out until Friday 7 May and due on Saturday 8 May: the Monday after is the first day on which the store can.
    const content = digestContent(
      digestFacts([told(diaryEntry(1, 5, { jobs: [job('LM-7', true, [-4, 4])] }))]),
    );
    expect(titles(content)).toEqual(['On 10 May at North store: a competent person']);
    expect(content.sections[0]?.lead).toContain('Until then nobody may use what has passed its day.');
  });

  it('names the store of what is overdue to somebody who hears of several', () => {
    const stores = [tellingStore(), tellingStore({ storeId: 2, byDefault: true, digest: 'overdueOnly' })];
    const south = diaryEntry(2, -1, { storeId: 2, storeName: 'South store' });
    const content = digestContent(digestFacts([told(diaryEntry(1, -1)), told(south)], { stores }));
    expect(content.sections[0]?.entries.map(({ title }) => title.text)).toEqual([
      'PL-1, panel lifter, North store',
      'PL-2, panel lifter, South store',
    ]);
    expect(content.footer.why).toBe(
      'This is for Storeman One, who hears of what falls due at North store. Nobody has chosen to hear of overdue gear at South store, so every manager with an address does.',
    );
  });

  it('tells a competent person what a visit of theirs would clear', () => {
    const person = { name: 'Examiner One', roles: ['competentPerson'] };
    const content = digestContent(digestFacts([told(diaryEntry(1, 7)), told(diaryEntry(2, -1))], { person }));
    expect(titles(content)).toEqual(['Overdue in store: 1', 'Your next visit to North store']);
    expect(content.sections[1]?.lead).toMatch(/^One visit of yours would clear 2 items/);
    const both = { name: 'Examiner Two', roles: ['competentPerson', 'manager'] };
    expect(titles(digestContent(digestFacts([told(diaryEntry(1, 7))], { person: both })))).toEqual([
      'By 10 May at North store: a competent person',
    ]);
  });

  it('cuts a list of more than 30 and links to the rest', () => {
    const many = Array.from({ length: 75 }, (_, index) => told(diaryEntry(index + 1, 7)));
    const [section] = digestContent(digestFacts(many)).sections;
    expect(section?.entries).toHaveLength(30);
    expect(section?.more).toEqual({ text: 'and 45 more', href: `${ADDRESS}/diary?storeId=1` });
    const entries = section?.entries ?? [];
    expect(cutShort(entries, 'x')).toEqual({ entries });
  });

  it('says why an item is due, whatever it is', () => {
    const type = 'thoroughExamination';
    const dueOn = addDays(TODAY, -1);
    const reasons = [
      { why: 'neverExamined', type, source: 'x' },
      { why: 'event', type, event: 'dropped', dueOn },
      { why: 'liftsUsed', type, dueOn },
      { why: 'defectDeadline', dueOn },
      { why: 'failed', type, dueOn },
      { why: 'inspection', type, dueOn: TODAY, source: 'x' },
      { why: 'inspection', type, dueOn: addDays(TODAY, 1), source: 'x' },
      { why: 'inspection', type, dueOn: addDays(TODAY, -400), source: 'x' },
    ] as const;
    const [section] = digestContent(digestFacts([told(diaryEntry(1, -1, { reasons }))])).sections;
    expect(section?.entries[0]?.sentences[0]).toBe(
      [
        'It never had its thorough examination.',
        'It was dropped on 2 May and needs a fresh thorough examination.',
        'It has made all the lifts it may make before its next thorough examination.',
        'A defect allowed use until 2 May only.',
        'It failed its thorough examination on 2 May.',
        'Its thorough examination is due today.',
        'Its thorough examination is due by 4 May, tomorrow.',
        'Its thorough examination was due on 29 March 2026, 400 days ago.',
      ].join(' '),
    );
  });
});

describe('a mail as text', () => {
  const long = 'word '.repeat(60).trim();
  const content = {
    subject: long,
    sections: [
      {
        title: long,
        grave: true,
        lead: long,
        entries: [
          {
            title: { text: long, href: `https://gear.example/${'a'.repeat(100)}` },
            sentences: [long, 'b'.repeat(90)],
            links: [{ text: long, href: 'https://gear.example/jobs/1' }],
          },
        ],
        more: { text: 'and 45 more', href: 'https://gear.example/diary' },
      },
    ],
    footer: { why: long, choose: { text: 'Choose', href: 'https://gear.example/me/mail' } },
  };

  // RFC 5322, 2.1.1: no more than 78 characters a line, but for what cannot be broken.
  it('has lines of at most 76 characters, and addresses whole on lines of their own', () => {
    const lines = mailText(content).split('\n');
    expect(lines.filter((line) => line.length > 76)).toEqual([
      `  ${'b'.repeat(90)}`,
      `  https://gear.example/${'a'.repeat(100)}`,
    ]);
    expect(lines.filter((line) => line.includes('http') && !/^ *https:\S+$/.test(line))).toEqual([]);
    expect(lines.some((line) => line.length > 70)).toBe(true);
  });

  it('says every word', () => {
    expect(mailText(content).match(/word/g)).toHaveLength(60 * 7);
  });

  it('has a subject that fits its column', () => {
    expect(fittingSubject('a'.repeat(200))).toBe('a'.repeat(200));
    expect(fittingSubject('a'.repeat(201))).toBe(`${'a'.repeat(199)}…`);
  });
});

describe('a mail as HTML', () => {
  it('takes what people wrote as text, and loads nothing', () => {
    const tag = '<img src=x onerror=alert(1)>&"';
    const html = mailHtml(digestContent(digestFacts([told(diaryEntry(1, -1, { tag }))])));
    expect(html).not.toContain('<img');
    expect(html).toContain('&lt;img src=x onerror=alert(1)>&amp;');
    expect(html).not.toMatch(/<[^>]*\s(src|background)=|url\(|@import|<link|<script/);
    expect([...html.matchAll(/href="([^"]*)"/g)].every(([, href]) => href?.startsWith(`${ADDRESS}/`))).toBe(
      true,
    );
    expect(html).toContain('<html lang="en">');
  });
});

describe('an urgent mail', () => {
  const flag = (itemId: number, more: Parameters<typeof unfitBooking>[1] = {}) => ({
    booking: unfitBooking(itemId, more),
    key: `flag ${itemId}`,
    replacement: { tag: 'PL-90', storeName: 'South store' },
  });
  const notice = (id: number, itemId: number, kind = 'immediateDanger') => ({
    id,
    kind,
    storeId: 1,
    item: { id: itemId, tag: `PL-${itemId}`, kind: 'panelLifter' },
    batch: null,
    what: 'cut\nthrough',
    by: 'Crew One',
    raisedAt: '2027-05-03T08:00:00.000Z',
    lastDayOfUse: null,
    settled: false,
  });
  const batch = {
    ...notice(9, 0, 'batchQuarantined'),
    item: null,
    batch: { batch: 'B 7/1', maker: 'Harrow & Works', items: 12 },
  };
  const content = (...args: Parameters<typeof urgentMatters>) =>
    urgentContent({
      matters: urgentMatters(...args),
      personName: 'Storeman One',
      kindName: () => 'Panel lifter',
      address: ADDRESS,
    });

  it('is one entry for an item, however many notices and jobs it concerns', () => {
    const mail = content(
      [notice(1, 5), notice(2, 5, 'dangerByDate')],
      [flag(5), flag(5, { jobId: 8, reference: 'LM-8', out: false })],
    );
    expect(mail.sections.map(({ title, entries }) => [title, entries.length])).toEqual([
      ['Danger found: do not use', 1],
    ]);
    expect(mail.sections[0]?.entries[0]?.sentences).toEqual([
      'Crew One found: cut through.',
      'Crew One found: cut through.',
      'Out on job LM-7, Harbour Hall, 1 May to 8 May: exchange it for PL-90, from South store.',
      'Reserved for job LM-8, Harbour Hall, 1 May to 8 May: take PL-90 instead, from South store.',
    ]);
    expect(mail.subject).toBe('Danger found on PL-5, out on jobs LM-7 and LM-8');
  });

  it('leads to the plan of a job where nothing else is free', () => {
    const mail = content([], [{ ...flag(5), replacement: undefined }]);
    expect(mail.subject).toBe('PL-5 is not fit for job LM-7');
    expect(mail.sections[0]?.entries[0]?.sentences.at(-1)).toMatch(
      /nothing else is fit and free, see its plan\.$/,
    );
    expect(mail.sections[0]?.entries[0]?.links).toEqual([
      { text: 'See the plan of job LM-7', href: `${ADDRESS}/jobs/7/plan` },
    ]);
    expect(mail.sections[0]?.entries[0]?.sentences[0]).toContain('In quarantine.');
  });

  it('names a batch and leads to it', () => {
    const mail = content([batch], []);
    expect(mail.subject).toBe('Batch B 7/1 out of service');
    expect(mail.sections[0]?.entries[0]?.title).toEqual({
      text: 'Batch B 7/1 of Harrow & Works, 12 items',
      href: `${ADDRESS}/trace/batches/B%207%2F1?maker=Harrow%20%26%20Works`,
    });
  });

  it('says several things in figures, the gravest first', () => {
    const mail = content(
      [notice(1, 5), notice(2, 6), batch, notice(3, 7, 'dangerByDate')],
      [flag(8), flag(9)],
    );
    expect(mail.subject).toBe(
      'Danger found on 2 items; Batch B 7/1 out of service; PL-7 a danger from a named day; 2 booked items not fit for job LM-7',
    );
    expect(mail.sections.map(({ title }) => title)).toEqual([
      'Danger found: do not use',
      'A whole batch is out of service',
      'A danger from a named day on',
      'Booked, but not fit any more',
    ]);
  });
});
