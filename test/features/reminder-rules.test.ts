import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ReminderRules } from '../../src/reminders/preferences/reminder-rules.service.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { holidayLines, readHolidays } from '../../src/reminders/preferences/holiday-lines.js';
import { ruleExample } from '../../src/reminders/preferences/rule-example.js';
import { toDay } from '../../src/rules/calendar/day.js';
import { DEFAULT_REMINDER_RULE } from '../../src/rules/reminders/reminder-rule.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';

describe.each(ENGINES)('when a store is reminded, on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const PRACTICE = { workDays: [1, 2, 3, 4, 5], holidays: [], leadDays: [30, 14, 7, 1], digestTime: '06:00' };
  let names = 0;
  /** The address of the rule of a store of its own. */
  const newStore = async (): Promise<{ id: number; url: string; page: string }> => {
    names += 1;
    const store = { name: `Shed ${names}`, address: '1 Quay', scheme: 'gb', timeZone: 'Europe/London' };
    const { body } = await server.manager.post('/api/stores').send(store).expect(201);
    return { id: body.id, url: `/api/stores/${body.id}/reminders`, page: `/stores/${body.id}/reminders` };
  };
  const change = (url: string, version: number, input: object) =>
    server.storeman.patch(url).set('if-match', `"v${version}"`).send(input);

  it('goes by common practice until somebody says otherwise', async () => {
    const { id, url } = await newStore();
    const read = await server.crew.get(url).expect(200).expect('etag', '"v0"');
    expect(read.body).toEqual({ storeId: id, ...PRACTICE, version: 0 });
  });

  it('changes what is named, leaves the rest, and stands in the history', async () => {
    const { id, url } = await newStore();
    const rules = server.app.get(ReminderRules, { strict: false });
    await change(url, 0, { leadDays: [1, 60, 21] })
      .expect(200)
      .expect('etag', '"v1"');
    const made = await change(url, 1, { workDays: [6, 1], holidays: ['2027-01-01', '2026-12-25'] }).expect(
      200,
    );
    const now = {
      workDays: [1, 6],
      holidays: ['2026-12-25', '2027-01-01'],
      leadDays: [60, 21, 1],
      digestTime: '06:00',
    };
    expect(made.body).toEqual({ storeId: id, ...now, version: 2 });
    expect((await rules.all()).get(id)).toEqual({ ...now, version: 2 });
    expect((await rules.all()).get(server.storeId)).toEqual({ ...PRACTICE, version: 0 });
    const [entry] = await server.app.get(Ledger).newest(1, { kind: 'store', id });
    expect(entry).toMatchObject({ action: 'store.remindersChanged', detail: now });
  });

  it('is for storemen and managers to change, and of stores that there are', async () => {
    const { url, page } = await newStore();
    for (const agent of [server.crew, server.examiner]) {
      await agent.patch(url).set('if-match', '"v0"').send({ digestTime: '07:00' }).expect(403);
      await agent.get(page).expect(403);
      await agent.post(page).type('form').send({ digestTime: '07:00' }).expect(403);
    }
    await server.visitor().get(url).expect(401);
    const read = await server.crew.get(url).expect(200);
    expect(read.body).toMatchObject({ ...PRACTICE, version: 0 });
    await server.crew.get('/api/stores/999999/reminders').expect(404);
    await change('/api/stores/999999/reminders', 0, { digestTime: '07:00' }).expect(404);
  });

  it('is changed by one of two who read the same version, be it the first or a later one', async () => {
    const { url } = await newStore();
    for (const version of [0, 1, 2]) {
      const answers = await Promise.all(
        ['07:00', '08:00'].map((digestTime) => change(url, version, { digestTime })),
      );
      expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
    }
    await server.storeman.patch(url).send({ digestTime: '09:00' }).expect(428);
  });

  it.each([
    ['no working day', 'workDays', [], 'choose at least one day on which the store works'],
    ['a working day that is none', 'workDays', [0, 1], 'from 1, Monday, to 7, Sunday'],
    ['a working day twice', 'workDays', [1, 1], 'once'],
    ['a day that does not exist', 'holidays', ['2026-02-31'], "'2026-02-31'"],
    ['a holiday twice', 'holidays', ['2026-12-25', '2026-12-25'], 'once'],
    ['300 holidays', 'holidays', daysFrom('2026-01-01', 300), 'at most 200 days; these are 300'],
    ['no lead time', 'leadDays', [], 'at least one lead time'],
    ['a lead time of nothing', 'leadDays', [0], 'from 1 to 365'],
    ['a lead time of more than a year', 'leadDays', [366], 'from 1 to 365'],
    ['half a day', 'leadDays', [1.5], 'from 1 to 365'],
    ['a lead time twice', 'leadDays', [7, 7], 'once'],
    ['nine lead times', 'leadDays', [1, 2, 3, 4, 5, 6, 7, 8, 9], 'at most 8'],
    ['half past twenty-four', 'digestTime', '24:30', 'from 00:00 to 23:59'],
    ['an hour of one digit', 'digestTime', '6:00', 'from 00:00 to 23:59'],
    ['no time', 'digestTime', '', 'from 00:00 to 23:59'],
    ['a time with a second line', 'digestTime', '06:00\r\nBcc: x', 'from 00:00 to 23:59'],
  ])('refuses %s, and says what to write', async (_, field, value, words) => {
    const { url } = await newStore();
    const refused = await change(url, 0, { [field]: value }).expect(400);
    expect(refused.body.code).toBe('bad_input');
    expect(refused.body.errors).toEqual([{ field, message: expect.stringContaining(words) }]);
    await server.crew.get(url).expect('etag', '"v0"');
  });

  const form = (changes: object = {}) => ({
    version: '0',
    'workDays[]': ['1', '2', '6'],
    holidays: '2026-12-24 to 2026-12-26\r\n\r\n2027-01-01',
    leadDays: '7, 30;1',
    digestTime: '05:45',
    ...changes,
  });

  it('is set on a page that takes ranges of days and shows them again as ranges', async () => {
    const { url, page } = await newStore();
    const sent = await server.storeman.post(page).type('form').send(form()).expect(303);
    expect(sent.headers['location']).toBe(page);
    const read = await server.storeman.get(url).expect(200);
    expect(read.body).toMatchObject({
      workDays: [1, 2, 6],
      holidays: ['2026-12-24', '2026-12-25', '2026-12-26', '2027-01-01'],
      leadDays: [30, 7, 1],
      digestTime: '05:45',
    });
    const shown = (await server.storeman.get(page).expect(200)).text;
    expect(shown).toContain('>2026-12-24 to 2026-12-26\n2027-01-01</textarea>');
    expect(shown).toMatch(/value="6" checked/);
    expect(shown).not.toMatch(/value="3" checked/);
    const cleared = { version: '1', holidays: '' };
    await server.storeman.post(page).type('form').send(form(cleared)).expect(303);
    expect((await server.storeman.get(url)).body.holidays).toEqual([]);
  });

  it('keeps what was typed beside what is wrong with it, line by line', async () => {
    const { url, page } = await newStore();
    const wrong = form({
      holidays: 'Christmas\n2026-12-25\n2026-02-31\n2027-01-02 to 2027-01-01\n2026-01-01 to 2026-12-31\n<b>',
      leadDays: 'a month, 7',
      'workDays[]': '7',
    });
    const refused = await server.storeman.post(page).type('form').send(wrong).expect(400);
    expect(refused.text).toContain("line 1: 'Christmas' is no day that exists");
    expect(refused.text).toContain("line 3: '2026-02-31' is no day that exists");
    expect(refused.text).toContain('line 4: 2027-01-01 comes before 2027-01-02');
    expect(refused.text).toContain('line 5: 365 days in a row');
    expect(refused.text).toContain("'a' is no number of days");
    expect(refused.text).not.toContain('line 2:');
    expect(refused.text).not.toContain('<b>');
    expect(refused.text).toContain('value="a month, 7"');
    expect(refused.text).toMatch(/value="7" checked/);
    await server.crew.get(url).expect('etag', '"v0"');
  });

  it.each([
    ['no working day', { 'workDays[]': undefined }, 'choose at least one day'],
    ['no lead time', { leadDays: ' ' }, 'at least one lead time'],
    ['no time', { digestTime: '' }, 'from 00:00 to 23:59'],
    ['a time that no clock shows', { digestTime: '24:30' }, 'from 00:00 to 23:59'],
    ['a day of the week that is none', { 'workDays[]': ['8'] }, 'from 1, Monday'],
    ['a field of its own', { surprise: '1' }, 'is not a field'],
  ])('is not set on the page with %s', async (_, changes, words) => {
    const { url, page } = await newStore();
    const refused = await server.storeman.post(page).type('form').send(form(changes)).expect(400);
    expect(refused.text).toContain(words);
    await server.crew.get(url).expect('etag', '"v0"');
  });

  it('is reached from the store and the list by those who may set it', async () => {
    const { id, page } = await newStore();
    for (const path of ['/stores', `/stores/${id}`]) {
      expect((await server.storeman.get(path).expect(200)).text).toContain(`href="${page}"`);
      expect((await server.crew.get(path).expect(200)).text).not.toContain(`href="${page}"`);
    }
  });
});

// Monday 2 November 2026, from a wall calendar: what is told on a Sunday or a Saturday moves to the Friday before.
describe('what a rule comes to', () => {
  const rule = { ...DEFAULT_REMINDER_RULE, holidays: [toDay('2026-11-23')] };

  it('is shown for an item due five weeks ahead', () => {
    expect(ruleExample(rule, toDay('2026-11-02'))).toEqual({
      dueOn: '2026-12-07',
      days: [
        { on: '2026-11-06', leadDays: [30] },
        { on: '2026-11-20', leadDays: [14] },
        { on: '2026-11-30', leadDays: [7] },
        { on: '2026-12-04', leadDays: [1] },
      ],
    });
  });

  it('joins lead times that fall on one day, and looks far enough ahead for a long one', () => {
    expect(ruleExample({ ...rule, leadDays: [60, 3, 2] }, toDay('2026-10-03'))).toEqual({
      dueOn: '2026-12-07',
      days: [
        { on: '2026-10-08', leadDays: [60] },
        { on: '2026-12-04', leadDays: [3, 2] },
      ],
    });
  });
});

describe('closed days as they are typed', () => {
  it('are single days and ranges, in any order and with any line ends', () => {
    const { days, faults } = readHolidays(
      ' 2027-01-01\r2026-12-24 – 2026-12-25\n2026-12-25 - 2026-12-26\r\n',
    );
    expect(days).toEqual(['2026-12-24', '2026-12-25', '2026-12-26', '2027-01-01']);
    expect(faults).toEqual([]);
    expect(readHolidays(holidayLines(days)).days).toEqual(days);
  });

  it('are at most 60 in one range', () => {
    expect(readHolidays('2026-01-01 to 2026-03-01').days).toHaveLength(60);
    expect(readHolidays('2026-01-01 to 2026-03-02').faults).toEqual([
      'line 1: 61 days in a row; write at most 60',
    ]);
  });
});

function daysFrom(first: string, many: number): string[] {
  const start = Date.parse(`${first}T00:00:00Z`);
  return Array.from({ length: many }, (_, index) =>
    new Date(start + index * 86_400_000).toISOString().slice(0, 10),
  );
}
