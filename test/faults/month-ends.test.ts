import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { ENGINES } from '../support/engines.js';
import { lifter } from '../support/gear-server.js';
import { jobInput, startGearYard, type GearYard } from '../support/gear-yard.js';
import { hostileClient, type HostileClient } from '../support/hostile-client.js';
import { expectNoDoubleBooking } from '../support/invariants.js';

/** Offsets from UTC by the IANA time zone database: +13:45 (summer time), -03:30 (winter) and +14:00 all year. */
const MIDNIGHTS = [
  { zone: 'Pacific/Chatham', before: '2026-12-31T10:14:59.999Z', after: '2026-12-31T10:15:00.000Z' },
  { zone: 'America/St_Johns', before: '2027-01-01T03:29:59.999Z', after: '2027-01-01T03:30:00.000Z' },
  { zone: 'Pacific/Kiritimati', before: '2026-12-31T09:59:59.999Z', after: '2026-12-31T10:00:00.000Z' },
];

describe.each(ENGINES)('days at the edges on %s', (engine) => {
  let yard: GearYard;
  let clock: Clock;

  beforeAll(async () => {
    yard = await startGearYard(engine);
    clock = yard.app.get(Clock);
  });
  afterAll(() => yard.close());

  /** Does something as someone who signed in at that instant. */
  const at = <T>(instant: string, job: (client: HostileClient) => Promise<T>): Promise<T> =>
    clock.at(instant, async () =>
      job(await hostileClient(yard.app, ['manager', 'storeman', 'competentPerson'])),
    );
  const jobOver = (client: HostileClient, loadOutDay: string, backDay: string) =>
    client.json('POST', '/api/jobs', { ...jobInput(yard.storeId, yard.day), loadOutDay, backDay });

  it.each([
    ['2028-02-28', '2028-02-29', '2028-02-29', '2028-03-01'],
    ['2027-01-31', '2027-02-01', '2027-02-01', '2027-02-28'],
    ['2027-12-30', '2027-12-31', '2027-12-31', '2028-01-02'],
  ])('windows %s to %s and %s to %s share a day; the day after is free', async (from, to, next, end) => {
    await at(`${from}T09:00:00.000Z`, async (client) => {
      const made = await client.json('POST', '/api/items', lifter(yard.storeId, { tag: `ME-${from}` }));
      const item = JSON.parse(made.text) as { id: number };
      const inspection = {
        type: 'thoroughExamination',
        doneOn: from,
        outcome: 'fit',
        reportNumber: `R-${from}`,
      };
      expect((await client.json('POST', `/api/items/${item.id}/inspections`, inspection)).status).toBe(201);
      const ids: number[] = [];
      for (const [loadOutDay, backDay] of [
        [from, to],
        [next, end],
        [dayAfter(to), dayAfter(end)],
      ] as const) {
        const made = await jobOver(client, loadOutDay, backDay);
        expect(made.status, made.text).toBe(201);
        ids.push((JSON.parse(made.text) as { id: number }).id);
      }
      const reserved: number[] = [];
      for (const id of ids)
        reserved.push((await client.json('POST', `/api/jobs/${id}/reservation`, {})).status);
      expect(reserved).toEqual([201, 409, 201]);
    });
    await expectNoDoubleBooking(yard.app);
  });

  it('knows which days exist', async () => {
    const client = await hostileClient(yard.app, ['storeman']);
    for (const day of ['2026-02-29', '2027-02-30', '2026-04-31', '2026-13-01', '2026-00-10', '31/12/2026']) {
      expect((await jobOver(client, day, '2028-03-01')).status, day).toBe(400);
    }
    const backwards = await jobOver(client, '2028-03-01', '2028-02-29');
    expect(backwards.status).toBe(400);
    expect((JSON.parse(backwards.text) as { errors: { field: string }[] }).errors[0]?.field).toBe('backDay');
  });

  it.each(MIDNIGHTS)(
    'today in $zone is the day there, to the millisecond',
    async ({ zone, before, after }) => {
      const client = await hostileClient(yard.app, ['manager', 'storeman']);
      const store = { name: `Store at ${zone}`, address: '1 Quay', scheme: 'gb', timeZone: zone };
      const made = await client.json('POST', '/api/stores', store);
      const { id: storeId } = JSON.parse(made.text) as { id: number };
      const item = await client.json('POST', '/api/items', lifter(storeId));
      const { id } = JSON.parse(item.text) as { id: number };
      const todayAt = (instant: string) =>
        at(instant, async (client) => {
          const answer = await client.raw({ method: 'GET', url: `/api/items/${id}/fitness` });
          return (JSON.parse(answer.text) as { from: string }).from;
        });
      expect([await todayAt(before), await todayAt(after)]).toEqual(['2026-12-31', '2027-01-01']);
      const examined = (instant: string) =>
        at(instant, async (client) => {
          const inspection = {
            type: 'thoroughExamination',
            doneOn: '2027-01-01',
            outcome: 'fit',
            reportNumber: 'R',
          };
          return (await client.json('POST', `/api/items/${id}/inspections`, inspection)).status;
        });
      // Nothing has been examined tomorrow.
      expect([await examined(before), await examined(after)]).toEqual([400, 201]);
    },
  );
});

/** The day after, by the calendar of JavaScript itself. */
function dayAfter(day: string): string {
  const next = new Date(`${day}T00:00:00Z`);
  next.setUTCDate(next.getUTCDate() + 1);
  return next.toISOString().slice(0, 10);
}
