import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { lifter } from '../support/gear-server.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { hostileClient, type HostileClient } from '../support/hostile-client.js';
import { expectWholeLedger } from '../support/invariants.js';

describe.each(ENGINES)('forms sent twice on %s', (engine) => {
  let yard: GearYard;
  let client: HostileClient;
  let forms: (readonly [url: string, fields: Record<string, string>])[];

  beforeAll(async () => {
    yard = await startGearYard(engine);
    client = await hostileClient(yard.app, ['manager', 'storeman', 'competentPerson']);
    forms = [...(await itemForms(yard)), ...(await jobForms(yard))];
  });
  afterAll(() => yard.close());

  it('take effect once, and answer alike', async () => {
    for (const [index, [url, fields]] of forms.entries()) {
      const form = Object.entries({ ...fields, _once: `once-${index}` });
      const before = await expectWholeLedger(yard.app);
      const [first, second] = await Promise.all([client.form(url, form), client.form(url, form)]);
      expect(first.status, `${url}: ${first.text.replace(/<[^>]*>/g, ' ').slice(-400)}`).toBe(303);
      const after = await expectWholeLedger(yard.app);
      expect(after, url).toBeGreaterThan(before);
      const third = await client.form(url, form);
      for (const again of [second, third]) {
        expect([again.status, again.headers['location']], url).toEqual([303, first.headers['location']]);
      }
      expect(await expectWholeLedger(yard.app), url).toBe(after);
      const other = await client.form(url, [...form, ['surprise', '1']]);
      expect(other.status, `${url} with the same key and other fields`).toBe(422);
    }
  });
});

async function itemForms(yard: GearYard): Promise<[string, Record<string, string>][]> {
  const { tag, serial, maker } = lifter(yard.storeId);
  const fresh = async () => `/register/${(await yard.newItem()).id}`;
  const item = { tag, serial, maker, kind: 'panelLifter', storeId: yard.storeId };
  const asText = Object.fromEntries(Object.entries(item).map(([name, value]) => [name, String(value)]));
  const rating = {
    'markings[0].measure': 'workingLoadLimit',
    'markings[0].value': '500',
    'markings[0].unit': 'kg',
  };
  const reason = { reason: 'stitching cut' };
  const edited = lifter(yard.storeId);
  return [
    ['/register/new', { ...asText, ...rating }],
    [
      `${await fresh()}/edit`,
      { ...asText, ...rating, tag: String(edited['tag']), serial: 'ZZ 99/X', version: '1' },
    ],
    [
      `${await fresh()}/inspection`,
      { type: 'thoroughExamination', doneOn: yard.day(-1), outcome: 'fit', reportNumber: 'R-7' },
    ],
    [`${await fresh()}/defect`, { severity: 'observation', description: 'paint worn' }],
    [`${await fresh()}/event`, { type: 'dropped', happenedOn: yard.day(-1) }],
    [`${await fresh()}/quarantine`, reason],
    [`${await fresh()}/repair`, reason],
    [`${await fresh()}/scrap`, { ...reason, howMadeUnusable: 'cut through' }],
    ['/stores', { name: 'Once', address: '9 Quay', scheme: 'gb', timeZone: 'Europe/London' }],
    [`/stores/${yard.farStoreId}`, { name: 'Renamed', version: '1' }],
    [
      '/people',
      { name: 'Once', signInName: 'once.only', password: 'a long enough password', 'roles[]': 'crew' },
    ],
  ];
}

async function jobForms(yard: GearYard): Promise<[string, Record<string, string>][]> {
  const { id: pinned } = await yard.gear('PL-ONCE');
  const job = await yard.job();
  const url = `/jobs/${job}`;
  const cancelled = `/jobs/${await yard.job({ from: 40, to: 41 })}`;
  const counts = ['crews', 'liftersInUse', 'panelsOnWheels', 'trucksUnloading', 'personsAloft'];
  const made = {
    reference: 'ONCE-1',
    name: 'Once',
    site: 'East',
    scheme: 'gb',
    method: 'tall-panel',
    storeId: String(yard.storeId),
    loadOutDay: yard.day(60),
    backDay: yard.day(61),
    otherStores: 'true',
    ...Object.fromEntries(counts.map((name) => [`counts.${name}`, '1'])),
    'panels[0].name': 'A1',
    'panels[0].heightMm': '7450',
    'panels[0].widthMm': '1210',
    'panels[0].thicknessMm': '112',
    'panels[0].massKg': '478',
    'panels[0].count': '4',
  };
  const pin = { choice: 'pin', itemId: String(pinned), lineKey: 'panelLifter', reason: 'near the door' };
  return [
    ['/jobs', made],
    [`${cancelled}/cancel`, { version: '1' }],
    [`${url}/plan/choices`, { ...pin, version: '1' }],
    [`${url}/plan/reservation`, { version: '2' }],
    [`${url}/hand-out`, { tag: 'PL-ONCE' }],
    [`${url}/bring-back`, { tag: 'PL-ONCE', condition: 'missing', remarks: 'left on site' }],
    [`${url}/found`, { itemId: String(pinned) }],
  ];
}
