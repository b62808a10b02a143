import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { hostileClient, type HostileClient } from '../support/hostile-client.js';
import { expectWholeLedger } from '../support/invariants.js';

type Fields = readonly (readonly [string, string])[];

/** What hostile or broken pages send. None of it is a form of ours, so that none of it may write. */
const FORMS: readonly Fields[] = [
  [],
  [['surprise', '1']],
  [
    ['panels[999].name', 'A1'],
    ['markings[999].value', '500'],
  ],
  [
    ['panels[0][x]', '1'],
    ['panels[][name]', '1'],
    ['[0].name', '1'],
  ],
  [
    ['panels', 'text'],
    ['panels[0].name', 'A1'],
    ['panels[]', 'x'],
  ],
  [
    ['tag', 'one'],
    ['tag', 'two'],
    ['name', 'one'],
    ['name', 'two'],
    ['reference', 'one'],
    ['reference', 'two'],
    ['reason', 'one'],
    ['reason', 'two'],
    ['version', '1'],
    ['version', '1'],
  ],
  [
    ['__proto__', 'x'],
    ['__proto__[0].polluted', 'x'],
  ],
  [['constructor', 'x']],
  [['panels[0].constructor', 'x']],
  [
    ['panels[0].__proto__', 'x'],
    ['panels[0].__proto__', 'y'],
  ],
  [
    ['toString', 'x'],
    ['valueOf', 'y'],
  ],
  [
    ['name', '\u0000'],
    ['tag', '\u0000'],
    ['reason', 'a\u0000b'],
    ['then', '\u0000'],
  ],
  [
    ['name', 'x'.repeat(300_000)],
    ['description', 'x'.repeat(300_000)],
  ],
  [
    ['version', 'abc'],
    ['itemId', '1e999'],
    ['bookedItemId', 'NaN'],
    ['storeId', '-1'],
  ],
  [
    ['version', '9'.repeat(30)],
    ['itemId', '9'.repeat(30)],
    ['bookedItemId', '9'.repeat(30)],
    ['choice', 'pin'],
  ],
  [
    ['counts.crews', '1e308'],
    ['counts.__proto__', '1'],
    ['counts', '1'],
    ['dimensions', '1'],
    ['dimensions.x', '1'],
  ],
  [
    ['_once', 'x'.repeat(100_000)],
    ['surprise', '1'],
  ],
];

describe.each(ENGINES)('hostile forms on %s', (engine) => {
  let yard: GearYard;
  let client: HostileClient;
  let pages: string[];

  beforeAll(async () => {
    yard = await startGearYard(engine);
    client = await hostileClient(yard.app, ['manager', 'storeman', 'competentPerson']);
    const { id: item } = await yard.gear('PL-FORMS');
    const job = `/jobs/${await yard.job()}`;
    const ofItem = [
      'edit',
      'inspection',
      'examination',
      'check',
      'documents',
      'defect',
      'event',
      'quarantine',
      'repair',
      'scrap',
    ];
    const ofJob = [
      'edit',
      'what-if',
      'panels',
      'panels?version=1',
      'cancel',
      'release',
      'hand-out',
      'bring-back',
      'found',
    ];
    pages = [
      ...[
        '/first-run',
        '/sign-in',
        '/people',
        `/people/${client.personId}`,
        '/stores',
        `/stores/${yard.storeId}`,
        `/stores/${yard.storeId}/reminders`,
        `/people/${client.personId}/mail`,
        '/me/mail',
      ],
      ...['/register/new', '/register/new?kind=panelLifter', '/register/import', '/jobs'],
      ...ofItem.map((page) => `/register/${item}/${page}`),
      ...[...ofJob, 'plan/choices', 'plan/reservation'].map((page) => `${job}/${page}`),
    ];
  });
  afterAll(() => yard.close());

  it('answers every page with what is wrong, and writes nothing', async () => {
    const before = await expectWholeLedger(yard.app);
    for (const url of pages) {
      for (const [index, fields] of FORMS.entries()) {
        const answer = await client.form(url, fields);
        const what = `${url}, form ${index}: ${answer.text.replace(/<[^>]*>/g, ' ').slice(-300)}`;
        expect(answer.status, what).toBeGreaterThanOrEqual(400);
        expect(answer.status, what).toBeLessThan(500);
        expect(answer.contentType, what).toContain('text/html');
        expect(answer.text, what).toContain('<h1');
      }
    }
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
    expect(await expectWholeLedger(yard.app)).toBe(before);
  });

  it('answers queries that no page of ours makes', async () => {
    const { id: item } = await yard.gear('PL-QUERY');
    const job = await yard.job();
    const list = [
      'text=%00',
      'storeId=abc',
      'storeId=-1',
      'currency=x',
      'after=zzz',
      'after=',
      'limit=0',
      'limit=1e9',
    ];
    const broken = [
      'condition=x',
      'surprise=1',
      'text=a&text=b',
      '__proto__=1',
      'constructor=1',
      'after=%F0%9F',
    ];
    const refused = [...list, ...broken].filter((query) => query !== 'after=');
    for (const query of refused) {
      for (const path of ['/register', '/api/items']) {
        const answer = await client.raw({ method: 'GET', url: `${path}?${query}` });
        expect(answer.status, `${path}?${query}`).toBe(400);
      }
    }
    const odd = [
      'kind=x',
      'kind=a&kind=b',
      'done=%00',
      'done=a&done=b',
      'then=a&then=b',
      'taken=1e9',
      'version=x',
    ];
    const cursors = [
      'after=upcoming.2026-02-30.x.1',
      'after=past.2026-01-01.2026-01-01.999999999999',
      'limit=-1',
    ];
    const places = [
      '/',
      '/register/new',
      '/sign-in',
      '/jobs',
      '/rules',
      '/ledger',
      '/people',
      '/stores',
      '/api/jobs',
    ];
    const records = [
      `/register/${item}`,
      `/register/${item}/inspection`,
      `/jobs/${job}/hand-out`,
      `/jobs/${job}/plan`,
    ];
    for (const path of [...places, ...records, `/api/items/${item}/fitness`]) {
      for (const query of [
        ...odd,
        ...cursors,
        ...list,
        ...broken,
        'from=2026-02-30',
        'from=2028-03-01&to=2028-02-29',
      ]) {
        const answer = await client.raw({ method: 'GET', url: `${path}?${query}` });
        expect(answer.status, `${path}?${query}`).toBeLessThan(500);
      }
    }
  });

  it('finds nothing at made-up numbers, for people as for programs', async () => {
    for (const id of ['0', '-1', '2147483648', '9007199254740992', 'abc', '%00', '1.5', '..%2f..%2fetc']) {
      for (const path of [
        '/register/',
        '/jobs/',
        '/stores/',
        '/register/import/',
        '/api/items/',
        '/api/jobs/',
      ]) {
        const answer = await client.raw({ method: 'GET', url: path + id });
        expect([400, 404], path + id).toContain(answer.status);
      }
    }
  });
});
