import { DateTime } from 'luxon';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { DueDiary } from '../../src/reminders/diary/diary.service.js';
import { DueIndex } from '../../src/reminders/due-index/due-index.service.js';
import { day as dayWords } from '../../src/web/sentences/words.js';
import { addDays, addMonths, toDay } from '../../src/rules/calendar/day.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';

interface Entry {
  readonly itemId: number;
  readonly tag: string;
  readonly dueOn: string;
  readonly overdue: boolean;
  readonly who: string;
  readonly reasons: readonly { readonly why: string }[];
  readonly jobs: readonly { readonly reference: string; readonly out: boolean }[];
  readonly stops: readonly { readonly reference: string }[];
}

describe.each(ENGINES)('the due diary on %s', (engine) => {
  let yard: GearYard;
  let outOn: number;
  beforeAll(async () => {
    yard = await startGearYard(engine);
    await yard.gear('DD-OUT');
    await yard.gear('DD-SOON');
    outOn = await yard.job({ reference: 'DD-J1', from: 0, to: 20, lifters: 2 });
    await yard.storeman.post(`/api/jobs/${outOn}/reservation`).expect(201);
    for (const tag of ['DD-OUT', 'DD-SOON'])
      await yard.storeman.post(`/api/jobs/${outOn}/hand-outs`).send({ tag }).expect(201);
    await report('DD-SOON', 'defects', {
      severity: 'dangerByDate',
      description: 'pin worn',
      lastDayOfUse: yard.day(5),
    });
    await report('DD-OUT', 'events', { type: 'dropped', happenedOn: yard.day(0) });
    await yard.gear('DD-WORN');
    const booked = await yard.job({ reference: 'DD-J2', from: 30, to: 40 });
    await yard.storeman.post(`/api/jobs/${booked}/reservation`).expect(201);
    const promised = (await yard.crew.get(`/api/jobs/${booked}/booking`).expect(200)).body.items[0].tag;
    expect(promised).toBe('DD-WORN');
    const worn = { severity: 'dangerByDate', description: 'pad worn', lastDayOfUse: yard.day(35) };
    await report('DD-WORN', 'defects', worn);
    await yard.gear('DD-NEW', { examinedDaysAgo: null });
    await yard.gear('DD-STRAP', { kind: 'ratchetStrap', rating: ['2500', 'daN'], examinedDaysAgo: 350 });
    await yard.gear('DD-FAR', { storeId: yard.farStoreId, examinedDaysAgo: 400 });
    await yard.gear('DD-LATER', { examinedDaysAgo: 40 });
    const { id } = await yard.gear('DD-AWAY', { examinedDaysAgo: 500 });
    await yard.crew.post(`/api/items/${id}/quarantine`).send({ reason: 'bent' }).expect(201);
  });
  afterAll(() => yard.close());

  async function report(tag: string, path: string, body: object): Promise<void> {
    const { body: found } = await yard.crew.get('/api/items').query({ text: tag }).expect(200);
    await yard.crew.post(`/api/items/${found.items[0].id}/${path}`).send(body).expect(201);
  }

  async function newStore(timeZone: string): Promise<number> {
    const store = { name: timeZone, address: '1 Quay', scheme: 'gb', timeZone };
    return (await yard.manager.post('/api/stores').send(store).expect(201)).body.id;
  }

  const read = async (query: object = {}) =>
    (await yard.crew.get('/api/diary').query(query).expect(200)).body as {
      entries: Entry[];
      today: string;
      through: string;
      visits: { storeId: number; itemIds: number[]; savesJobs: { reference: string }[] }[];
      notAtStore: number[];
      overdue: number;
      weeks: { monday: string; count: number }[];
    };

  it('puts overdue gear that is out on a job first, then what is overdue, then by day', async () => {
    const { entries } = await read();
    expect(entries.map(({ tag }) => tag)).toEqual([
      'DD-OUT',
      'DD-FAR',
      'DD-NEW',
      'DD-SOON',
      'DD-STRAP',
      'DD-WORN',
    ]);
    expect(entries.map(({ overdue }) => overdue)).toEqual([true, true, true, false, false, false]);
  });

  it('says why, who may do it, and which jobs it would stop', async () => {
    const { entries } = await read();
    const of = (tag: string) => entries.find((entry) => entry.tag === tag);
    expect(of('DD-OUT')).toMatchObject({
      dueOn: yard.day(0),
      who: 'competentPerson',
      reasons: [{ why: 'event', event: 'dropped', type: 'thoroughExamination' }],
      stops: [{ reference: 'DD-J1', out: true, to: yard.day(20) }],
    });
    expect(of('DD-WORN')).toMatchObject({
      dueOn: yard.day(35),
      who: 'competentPerson',
      reasons: [{ why: 'defectDeadline' }],
      stops: [{ reference: 'DD-J2', out: false }],
    });
    expect(of('DD-NEW')).toMatchObject({ reasons: [{ why: 'neverExamined' }], stops: [] });
    // PUWER 1998 reg 6(2) leaves the inspection of straps to a competent user; the house interval is a year.
    expect(of('DD-STRAP')).toMatchObject({
      dueOn: addMonths(yard.day(-350), 12),
      who: 'inspector',
      reasons: [{ why: 'inspection', type: 'interimInspection' }],
    });
  });

  it('narrows by store and by months, and refuses what is neither', async () => {
    const far = await read({ storeId: yard.farStoreId });
    expect(far.entries.map(({ tag }) => tag)).toEqual(['DD-FAR']);
    const month = await read({ storeId: yard.storeId, monthsAhead: 1 });
    expect(month.entries.map(({ tag }) => tag)).toEqual(['DD-OUT', 'DD-NEW', 'DD-SOON', 'DD-STRAP']);
    const year = await read({ monthsAhead: 12 });
    expect(year.entries.map(({ tag }) => tag)).toContain('DD-LATER');
    await yard.crew.get('/api/diary').query({ storeId: 999_999 }).expect(404);
    await yard.crew.get('/api/diary').query({ monthsAhead: 13 }).expect(400);
    await yard.crew.get('/api/diary').query({ month: 3 }).expect(400);
    await yard.visitor().get('/api/diary').expect(401);
  });

  it('tells the same before and after the index has caught up, and counts weeks by the index', async () => {
    const before = await read();
    await yard.app.get(DueIndex, { strict: false }).refresh();
    const after = await read();
    expect(after.entries).toEqual(before.entries);
    const all = (await read({ monthsAhead: 12 })).entries;
    // Months that are listed and months that are not: the picture is the same. luxon says where a week begins.
    const weekOf = (day: string) => DateTime.fromISO(day).startOf('week').toISODate();
    expect(after.weeks).toHaveLength(26);
    for (const { monday, count } of after.weeks) {
      const due = all.filter(({ overdue, dueOn }) => !overdue && weekOf(dueOn) === monday);
      expect([monday, count]).toEqual([monday, due.length]);
    }
    expect(after.weeks.some(({ monday, count }) => monday > addMonths(yard.day(0), 3) && count > 0)).toBe(
      true,
    );
  });

  it('leaves hired gear to its owner when its hire ends before it falls due, except what is out', async () => {
    const [kept, ended] = [await yard.gear('DD-HIRE'), await yard.gear('DD-OVER', { examinedDaysAgo: 250 })];
    const due = (await read({ monthsAhead: 6 })).entries.find(({ tag }) => tag === 'DD-HIRE')?.dueOn ?? '';
    const tagsWith = async (id: number, hiredTo: string) => {
      const { headers } = await yard.crew.get(`/api/items/${id}`).expect(200);
      await yard.storeman
        .patch(`/api/items/${id}`)
        .set('if-match', String(headers['etag']))
        .send({ owner: 'Hire yard', hiredTo })
        .expect(200);
      return (await read({ monthsAhead: 6 })).entries.map(({ tag }) => tag);
    };
    expect(await tagsWith(kept.id, due)).toContain('DD-HIRE');
    expect(await tagsWith(kept.id, addDays(toDay(due), -1))).not.toContain('DD-HIRE');
    expect(await tagsWith(ended.id, yard.day(0))).toContain('DD-OVER');
    expect(await tagsWith(ended.id, yard.day(-1))).not.toContain('DD-OVER');
    const out = (await yard.app.get(DueDiary, { strict: false }).entries({ daysAhead: 90 }))[0];
    expect(out?.tag).toBe('DD-OUT');
    expect(await tagsWith(out?.itemId ?? 0, yard.day(-1))).toContain('DD-OUT');
  });

  it('says of a drop of today the same in its summary, its picture and its list', async () => {
    const { entries, overdue } = await read();
    expect(
      entries.filter((entry) => entry.overdue && entry.dueOn === yard.day(0)).map(({ tag }) => tag),
    ).toEqual(['DD-OUT', 'DD-NEW']);
    expect(overdue).toBe(entries.filter((entry) => entry.overdue).length);
    const { text } = await yard.crew.get('/diary').expect(200);
    expect(text).toContain(`${overdue} items are overdue`);
    expect(text).toContain(`Items due: overdue now ${overdue}`);
    expect(text).toContain(`<th scope="row">overdue now</th><td class="num">${overdue}</td>`);
  });

  it('shows stores that live on different days as one: each by its own today, and nothing lost in between', async () => {
    const clock = yard.app.get(Clock, { strict: false });
    const west = await newStore('Pacific/Pago_Pago');
    await newStore('Pacific/Kiritimati');
    const westToday = clock.today('Pacific/Pago_Pago');
    await yard.gear('DD-WEST', { storeId: west });
    await report('DD-WEST', 'defects', {
      severity: 'dangerByDate',
      description: 'pin worn',
      lastDayOfUse: westToday,
    });
    const { today, through, entries, weeks } = await read({ monthsAhead: 12 });
    // UTC+14 and UTC-11 never live on the same day.
    expect(today).toBe(clock.today('Pacific/Kiritimati'));
    expect(today > westToday).toBe(true);
    expect(through).toBe(addMonths(toDay(today), 12));
    const last = entries.find(({ tag }) => tag === 'DD-WEST');
    expect(last).toMatchObject({ overdue: false, dueOn: westToday, today: westToday });
    const end = addDays(toDay(weeks.at(-1)?.monday ?? ''), 7);
    const ahead = entries.filter(({ overdue, dueOn }) => !overdue && dueOn < end).length;
    expect(weeks.reduce((sum, { count }) => sum + count, 0)).toBe(ahead);
  });

  it('counts as a reason what can be done in one go with what is due first, and asks nobody else to come', async () => {
    const storeId = await newStore('Europe/Dublin');
    const strap = { storeId, kind: 'ratchetStrap', rating: ['2500', 'daN'], examinedDaysAgo: 350 } as const;
    const due = addMonths(yard.day(-350), 12);
    for (const days of [42, 43]) {
      await yard.gear(`DD-GO-${days}`, strap);
      const lastDayOfUse = addDays(due, days);
      await report(`DD-GO-${days}`, 'defects', {
        severity: 'dangerByDate',
        description: 'label fades',
        lastDayOfUse,
      });
    }
    const { entries } = await read({ storeId });
    const told = entries.map(({ tag, dueOn, who, reasons }) => [
      tag,
      dueOn,
      who,
      ...reasons.map(({ why }) => why),
    ]);
    // Six weeks: no more of an interval is given away.
    expect(told).toEqual([
      ['DD-GO-42', due, 'competentPerson', 'inspection', 'defectDeadline'],
      ['DD-GO-43', due, 'inspector', 'inspection'],
    ]);
  });

  it('suggests visits that save jobs, and leaves out what does not come back in time', async () => {
    const { entries, visits, notAtStore } = await read();
    const out = await yard.app.get(DueDiary, { strict: false }).entries({ daysAhead: 150 });
    const idOf = (tag: string) => out.find((entry) => entry.tag === tag)?.itemId ?? 0;
    expect(notAtStore).toEqual([idOf('DD-OUT'), idOf('DD-SOON')]);
    const saving = visits.find(({ itemIds }) => itemIds.includes(idOf('DD-WORN')));
    expect(saving?.savesJobs.map(({ reference }) => reference)).toEqual(['DD-J2']);
    const visited = visits.flatMap(({ itemIds }) => itemIds).sort((a, b) => a - b);
    const due = entries.map(({ tag }) => idOf(tag)).filter((id) => !notAtStore.includes(id));
    expect(visited).toEqual(expect.arrayContaining(due));
    expect(new Set(visited).size).toBe(visited.length);
  });

  it('suggests the same visits however far the list goes', async () => {
    // Due a fortnight and five weeks from now: the visit of the first takes the second, beyond a list of a month.
    for (const [tag, days] of [
      ['DD-NEAR', 14],
      ['DD-BEYOND', 40],
    ] as const) {
      await yard.gear(tag);
      const description = 'pad worn';
      await report(tag, 'defects', { severity: 'dangerByDate', description, lastDayOfUse: yard.day(days) });
    }
    const [month, year] = [await read({ monthsAhead: 1 }), await read({ monthsAhead: 12 })];
    expect(month.entries.map(({ tag }) => tag)).not.toContain('DD-BEYOND');
    const beyond = year.entries.find(({ tag }) => tag === 'DD-BEYOND')?.itemId ?? 0;
    expect(month.visits.some(({ itemIds }) => itemIds.includes(beyond))).toBe(true);
    expect(month.visits.length).toBeGreaterThan(0);
    for (const visit of month.visits) expect(year.visits).toContainEqual(visit);
  });

  it('shows it all as a page: what to do first, the visits, and the picture with its figures as a table', async () => {
    const { text } = await yard.examiner.get('/diary?storeId=&monthsAhead=3').expect(200);
    const order = ['id="out-overdue"', 'id="load-ahead"', 'id="visits"', 'id="not-reached"', 'id="by-week"'];
    const places = order.map((mark) => text.indexOf(mark));
    expect(places.every((place) => place > 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(text).toContain(`href="/jobs/${outOn}"`);
    expect(text).toContain('saves job DD-J2');
    expect(text).toContain(`out past its day: exchange it by ${dayWords(yard.day(5))}`);
    expect(text.match(/<svg/g)).toHaveLength(2);
    expect(text).toContain('<caption>Items that fall due by week</caption>');
    expect(text).toContain('Examine it');
    expect((await yard.crew.get('/diary').expect(200)).text).not.toContain('Examine it');
    await yard.crew.get('/diary?monthsAhead=0').expect(400);
  });
});
