import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { DueDiary } from '../../src/reminders/diary/diary.service.js';
import type { DiaryEntry } from '../../src/reminders/diary/diary-entry.js';
import { DueIndex } from '../../src/reminders/due-index/due-index.service.js';
import { FeedReader } from '../../src/reminders/feed/feed-reader.service.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { expectSoundText, readCalendar, type ReadEvent } from '../support/calendar-checks.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';

const HOST = 'gear.example';

describe.each(ENGINES)('the calendar of what falls due, on %s', (engine) => {
  let yard: GearYard;
  let path: string;
  beforeAll(async () => {
    yard = await startGearYard(engine, { publicUrl: `https://${HOST}` });
    path = await newFeed({ storeId: yard.storeId });
  });
  afterAll(() => yard.close());

  async function newFeed(input: object, agent = yard.storeman): Promise<string> {
    const made = await agent.post('/api/calendar-feeds').send(input).expect(201);
    return new URL(made.body.address as string).pathname;
  }

  async function read(at = path): Promise<Map<string, ReadEvent>> {
    await yard.app.get(DueIndex, { strict: false }).refresh();
    const { text } = await yard.visitor().get(at).expect(200);
    expectSoundText(text);
    return readCalendar(text);
  }

  const diary = (storeIds: number[]): Promise<DiaryEntry[]> =>
    yard.app.get(DueDiary, { strict: false }).entries({ storeIds, daysAhead: 400 });

  const dueUid = (day: string, storeId = yard.storeId): string => `due-${storeId}-${day}@${HOST}`;

  /** The tags that an event names. */
  const tagsOf = (event: ReadEvent | undefined): string[] =>
    (event?.description ?? '')
      .split('\n')
      .filter((line) => line.includes('): '))
      .map((line) => line.split(' (')[0] ?? '');

  it('says what the diary says, day by day, and all that is overdue on today', async () => {
    await yard.gear('CF-1', { examinedDaysAgo: 10 });
    await yard.gear('CF-2', { examinedDaysAgo: 10 });
    await yard.gear('CF-3', { examinedDaysAgo: 100 });
    await yard.gear('CF-4', { examinedDaysAgo: 300 });
    await yard.gear('CF-5', { examinedDaysAgo: 900 });
    await yard.gear('CF-6', { examinedDaysAgo: null });
    await yard.job({ from: 3, to: 6 });
    const events = await read();
    const entries = await diary([yard.storeId]);
    expect(entries.length).toBeGreaterThanOrEqual(6);
    const days = [...new Set(entries.map(({ dueOn }) => dueOn))].filter((day) => day >= yard.day(-365));
    const uids = days.map((day) => dueUid(day));
    expect([...events.keys()].sort()).toEqual([...uids, `overdue-${yard.storeId}@${HOST}`].sort());
    for (const day of days) {
      const event = events.get(dueUid(day));
      const due = entries.filter(({ dueOn }) => dueOn === day);
      expect(tagsOf(event)).toEqual(due.map(({ tag }) => tag));
      expect(event).toMatchObject({ start: day, end: addDays(day, 1), isDate: true, status: 'CONFIRMED' });
      expect(event?.summary).toContain(`${due.length} item`);
    }
    const overdue = entries.filter((entry) => entry.overdue).map(({ tag }) => tag);
    const today = events.get(`overdue-${yard.storeId}@${HOST}`);
    expect(overdue).toEqual(expect.arrayContaining(['CF-4', 'CF-5', 'CF-6']));
    expect(tagsOf(today)).toEqual(overdue);
    expect(today).toMatchObject({ start: yard.day(0), isDate: true, status: 'CONFIRMED' });
  });

  it('blocks nobody, leads to the diary, and tells when it was changed in UTC', async () => {
    for (const event of (await read()).values()) {
      // RFC 5545 section 3.8.2.7.
      expect(event.transparency).toBe('TRANSPARENT');
      expect(event.url).toBe(`https://${HOST}/diary?storeId=${yard.storeId}`);
      // Section 3.8.7.2 and 3.8.7.3: date and time in UTC.
      expect(event.stamp).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
      expect(event.modified).toBe(event.stamp);
      expect(Date.parse(event.stamp)).toBeLessThanOrEqual(Date.now() + 1000);
    }
  });

  it('calls the old day off when an item is examined, and shows the new one', async () => {
    const item = await yard.gear('CF-7', { examinedDaysAgo: 40 });
    const before = await read();
    const was = (await diary([yard.storeId])).find(({ tag }) => tag === 'CF-7')?.dueOn ?? '';
    expect(before.get(dueUid(was))).toMatchObject({ status: 'CONFIRMED' });
    const inspection = {
      type: 'thoroughExamination',
      doneOn: yard.day(-1),
      outcome: 'fit',
      reportNumber: 'R-9',
    };
    await yard.examiner.post(`/api/items/${item.id}/inspections`).send(inspection).expect(201);
    const after = await read();
    const is = (await diary([yard.storeId])).find(({ tag }) => tag === 'CF-7')?.dueOn ?? '';
    expect(is > was).toBe(true);
    // RFC 5545 section 3.8.1.11 and 3.8.7.4: cancelled, in a later revision of the same event.
    const [old, next] = [after.get(dueUid(was)), after.get(dueUid(is))];
    expect(old?.status).toBe('CANCELLED');
    expect(old?.sequence).toBeGreaterThan(before.get(dueUid(was))?.sequence ?? Infinity);
    expect(tagsOf(old)).toEqual([]);
    expect(next?.status).toBe('CONFIRMED');
    expect(tagsOf(next)).toContain('CF-7');
    const kept = [...before.keys()].filter((uid) => !after.has(uid));
    expect(kept).toEqual([]);
  });

  it('keeps every UID, and no sequence goes back', async () => {
    const before = await read();
    await yard.gear('CF-8', { examinedDaysAgo: 10 });
    const after = await read();
    for (const [uid, event] of before) {
      expect(after.has(uid)).toBe(true);
      expect(after.get(uid)?.sequence).toBeGreaterThanOrEqual(event.sequence);
    }
    const day = (await diary([yard.storeId])).find(({ tag }) => tag === 'CF-8')?.dueOn ?? '';
    expect(after.get(dueUid(day))?.sequence).toBeGreaterThan(before.get(dueUid(day))?.sequence ?? Infinity);
  });

  it('names the jobs that would be stopped', async () => {
    await yard.gear('CF-10', { examinedDaysAgo: 5 });
    const id = await yard.job({ reference: 'LM-2047', from: 3, to: 8 });
    await yard.storeman.post(`/api/jobs/${id}/reservation`).expect(201);
    const booking = await yard.storeman.get(`/api/jobs/${id}/booking`).expect(200);
    const itemId: number = booking.body.items[0].itemId;
    const soon = { type: 'thoroughExamination', doneOn: yard.day(0), outcome: 'fit', nextDueOn: yard.day(5) };
    await yard.examiner
      .post(`/api/items/${itemId}/inspections`)
      .send({ ...soon, reportNumber: 'R-10' })
      .expect(201);
    const stopped = (await diary([yard.storeId])).filter(({ stops }) => stops.length > 0);
    expect(stopped.map((entry) => entry.itemId)).toEqual([itemId]);
    const events = await read();
    for (const entry of stopped)
      expect(events.get(dueUid(entry.dueOn))?.summary).toContain('(stops job LM-2047)');
  });

  it('writes names and tags of every kind so that they come back letter by letter', async () => {
    const name = 'Schuppen, Süd; «Nord» \\ Ost und noch viel weiter, 東の倉庫 hinter dem Hafenbecken';
    const store = { name, address: '1 Kai', scheme: 'gb', timeZone: 'Pacific/Chatham' };
    const { body } = await yard.manager.post('/api/stores').send(store).expect(201);
    const tag = 'Ä,1;2\\n🏗';
    await yard.newItem({ tag, storeId: body.id });
    const at = await newFeed({ storeId: body.id });
    const { text } = await yard.visitor().get(at).expect(200);
    const [event] = (await read(at)).values();
    expect(event?.summary).toContain(name);
    expect(tagsOf(event)).toEqual([tag]);
    expect(text.replaceAll('\r\n ', '')).toContain(
      'X-WR-CALNAME:Gear due\\, Schuppen\\, Süd\\; «Nord» \\\\ Ost',
    );
  });

  it('takes each store by its own today', async () => {
    for (const [timeZone, name] of [
      ['Pacific/Kiritimati', 'East of all'],
      ['Pacific/Pago_Pago', 'West of all'],
    ]) {
      const store = { name, address: '1 Quay', scheme: 'gb', timeZone };
      const { body } = await yard.manager.post('/api/stores').send(store).expect(201);
      await yard.newItem({ storeId: body.id });
      const events = await read(await newFeed({ storeId: body.id }));
      const [entry] = await diary([body.id]);
      expect(events.get(`overdue-${body.id}@${HOST}`)?.start).toBe(entry?.today);
    }
  });

  it('shows a person the stores chosen for mail, and no more', async () => {
    const at = await newFeed({}, yard.examiner);
    expect([...(await read(at)).keys()].some((uid) => uid.startsWith(`due-${yard.storeId}-`))).toBe(true);
    const own = await yard.examiner.get('/api/calendar-feeds').expect(200);
    const id: number = own.body[0].personId;
    const choice = await yard.manager.get(`/api/people/${id}/mail`).expect(200);
    await yard.manager
      .patch(`/api/people/${id}/mail`)
      .set('if-match', String(choice.headers['etag']))
      .send({ storeIds: [yard.farStoreId] })
      .expect(200);
    expect([...(await read(at)).keys()]).toEqual([]);
  });

  it('has the same tag as long as nothing changes, and sends nothing then', async () => {
    const first = await yard.visitor().get(path).expect(200);
    expect(first.headers['content-type']).toBe('text/calendar; charset=utf-8');
    expect(first.headers['cache-control']).toBe('private, no-cache');
    expect(first.headers['x-robots-tag']).toContain('noindex');
    expect(first.headers['referrer-policy']).toBe('no-referrer');
    expect(first.headers['set-cookie']).toBeUndefined();
    const etag = String(first.headers['etag']);
    // RFC 9110 section 13.1.2: tags in a list, and weak ones, count as the same.
    for (const tag of [etag, `W/${etag}`, `"other", ${etag}`, '*'])
      expect((await yard.visitor().get(path).set('if-none-match', tag).expect(304)).text).toBe('');
    await yard.visitor().get(path).set('if-none-match', '"other"').expect(200);
    await yard.newItem({ tag: 'CF-9' });
    await yard.visitor().get(path).set('if-none-match', etag).expect(200);
  });

  // RFC 9110 section 9.3.2: the answer to HEAD has the fields of that to GET, and no content.
  it('answers a program that asks for the fields only', async () => {
    const { headers } = await yard.visitor().get(path).expect(200);
    const head = await yard.visitor().head(path).expect(200);
    expect(head.text).toBeUndefined();
    for (const field of ['etag', 'content-type', 'cache-control'])
      expect(head.headers[field]).toBe(headers[field]);
  });

  it('is written anew when due days were worked out again though nobody wrote anything', async () => {
    const before = await read();
    // As another `config/` does it.
    await yard.app
      .get(UnitOfWork, { strict: false })
      .run((manager) => manager.query('INSERT INTO due_stale (item_id) SELECT id FROM item'));
    const after = await read();
    const confirmed = [...before.values()].filter(
      ({ uid, status }) => uid.startsWith('due-') && status === 'CONFIRMED',
    );
    expect(confirmed.length).toBeGreaterThan(0);
    for (const { uid, sequence } of confirmed) expect(after.get(uid)?.sequence).toBeGreaterThan(sequence);
  });

  it('shows the address of a public server without a warning', async () => {
    await yard.storeman.post('/calendar').type('form').send({ storeId: '' }).expect(303);
    const { text } = await yard.storeman.get('/calendar').expect(200);
    expect(text).toContain(`value="https://${HOST}/calendar/`);
    expect(text).not.toContain('Only this computer');
  });

  it('is written anew when only the name of a job changed, or a store, or the day', async () => {
    const before = await read();
    const stopped = [...before.values()].find(({ summary }) => summary.includes('LM-2047'));
    const jobs = await yard.storeman.get('/api/jobs').expect(200);
    const { id } = jobs.body.jobs.find(({ reference }: { reference: string }) => reference === 'LM-2047');
    const job = await yard.storeman.get(`/api/jobs/${id}`).expect(200);
    await yard.storeman
      .patch(`/api/jobs/${id}`)
      .set('if-match', String(job.headers['etag']))
      .send({ reference: 'LM-2047B' })
      .expect(200);
    expect((await read()).get(stopped?.uid ?? '')?.summary).toContain('LM-2047B');
    const store = await yard.manager.get(`/api/stores/${yard.storeId}`).expect(200);
    await yard.manager
      .patch(`/api/stores/${yard.storeId}`)
      .set('if-match', String(store.headers['etag']))
      .send({ name: 'Renamed quay' })
      .expect(200);
    expect((await read()).get(stopped?.uid ?? '')?.summary).toContain('Renamed quay');
    const clock = yard.app.get(Clock, { strict: false });
    const reader = yard.app.get(FeedReader, { strict: false });
    const tomorrow = `${yard.day(1)}T12:00:00.000Z`;
    const later = await clock.at(tomorrow, () => reader.open(path.replace('/calendar/', '')));
    const overdue = readCalendar(later?.text ?? '').get(`overdue-${yard.storeId}@${HOST}`);
    expect(overdue?.start).toBe(yard.day(1));
    expect((await read()).get(`overdue-${yard.storeId}@${HOST}`)?.start).toBe(yard.day(0));
  });
});
