import { Clock } from '../../src/clock.js';
import { MailEntity } from '../../src/reminders/outbox/mail.entity.js';
import { Outbox } from '../../src/reminders/outbox/post-mail.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { checkAnswers } from './check-answers.js';
import { examination, worn } from './example-examination.js';
import { lifter } from './gear-server.js';
import { jobInput, type GearYard } from './gear-yard.js';
import type { HostileClient } from './hostile-client.js';
import { multipartCsv } from './multipart.js';

/** A route of the API that writes, with a body that it takes. */
export interface WriteRoute {
  readonly method: 'POST' | 'PATCH';
  /** As the API description writes it. */
  readonly path: string;
  readonly url: string;
  readonly body: unknown;
  /** Where the ETag is read that the route wants in If-Match. */
  readonly etagOf?: string;
}

/** The routes by name, so that each is a test of its own. */
export const WRITE_ROUTES = [
  'POST /api/first-account',
  'POST /api/session',
  'POST /api/people',
  'PATCH /api/people/{id}',
  'POST /api/stores',
  'PATCH /api/stores/{id}',
  'PATCH /api/stores/{id}/reminders',
  'PATCH /api/people/{id}/mail',
  'POST /api/calendar-feeds',
  'POST /api/calendar-feeds/{id}/revocation',
  'POST /api/outbox/{id}/resend',
  'POST /api/items',
  'PATCH /api/items/{id}',
  'POST /api/items/{id}/inspections',
  'POST /api/items/{id}/examinations',
  'POST /api/items/{id}/checks',
  'POST /api/items/{id}/defects',
  'POST /api/items/{id}/events',
  'POST /api/items/{id}/documents',
  'POST /api/items/{id}/quarantine',
  'POST /api/items/{id}/repair',
  'POST /api/items/{id}/scrap',
  'POST /api/items/{id}/found',
  'POST /api/notices/{id}/settled',
  'POST /api/jobs',
  'PATCH /api/jobs/{id}',
  'POST /api/jobs/{id}/what-if',
  'POST /api/jobs/{id}/panels-csv',
  'POST /api/jobs/{id}/choices',
  'POST /api/jobs/{id}/cancellation',
  'POST /api/jobs/{id}/reservation',
  'POST /api/jobs/{id}/hand-outs',
  'POST /api/jobs/{id}/returns',
  'POST /api/jobs/{id}/releases',
  'POST /api/jobs/{id}/lifts',
  'POST /api/jobs/{id}/events',
  'POST /api/trace/batches/{batch}/quarantine',
  'POST /api/register/import',
  'POST /api/register/import/{uploadId}/mapping',
  'POST /api/register/import/{uploadId}/accept',
] as const;

const REASON = { reason: 'stitching cut' };

/** Every route of the API that writes, against records of its own so that they do not get in each other's way. */
export async function writeRoutes(yard: GearYard, client: HostileClient): Promise<WriteRoute[]> {
  const items = await itemRoutes(yard);
  return [
    ...(await peopleRoutes(yard)),
    ...items,
    ...(await jobRoutes(yard)),
    ...(await importRoutes(client)),
  ];
}

async function peopleRoutes(yard: GearYard): Promise<WriteRoute[]> {
  const account = { name: 'Someone', signInName: 'some.one', password: 'a password of some length' };
  const store = { name: 'Third yard', address: '3 Quay', scheme: 'gb', timeZone: 'Europe/London' };
  const person = await yard.manager
    .post('/api/people')
    .send({ ...account, roles: ['crew'] })
    .expect(201);
  const far = `/api/stores/${yard.farStoreId}`;
  const feed = await yard.manager.post('/api/calendar-feeds').send({}).expect(201);
  return [
    post('/api/first-account', { ...account, setupCode: 'AAAA-AAAA' }),
    post('/api/session', { signInName: 'some.body', password: 'a password of some length' }),
    post('/api/people', { ...account, signInName: 'some.other', roles: ['crew'] }),
    {
      ...post(
        '/api/people/{id}',
        { roles: ['crew'], active: true, password: account.password },
        person.body.id,
      ),
      method: 'PATCH',
    },
    post('/api/stores', store),
    post('/api/calendar-feeds', { storeId: yard.storeId }),
    post('/api/calendar-feeds/{id}/revocation', {}, feed.body.id),
    post('/api/outbox/{id}/resend', {}, await mailGivenUp(yard, person.body.id)),
    {
      method: 'PATCH',
      path: '/api/stores/{id}',
      url: far,
      body: { ...store, name: 'Far yard' },
      etagOf: far,
    },
    {
      method: 'PATCH',
      path: '/api/stores/{id}/reminders',
      url: `${far}/reminders`,
      body: { workDays: [1, 6], holidays: ['2026-12-25'], leadDays: [30, 1], digestTime: '05:30' },
      etagOf: `${far}/reminders`,
    },
    {
      method: 'PATCH',
      path: '/api/people/{id}/mail',
      url: `/api/people/${person.body.id}/mail`,
      body: { address: 'some.one@yard.example', digest: 'weekly', urgent: true, storeIds: [yard.storeId] },
      etagOf: `/api/people/${person.body.id}/mail`,
    },
  ];
}

/** The number of a mail that was given up. */
function mailGivenUp(yard: GearYard, personId: number): Promise<number> {
  const [at, address] = [yard.app.get(Clock).now(), 'some.one@yard.example'];
  return yard.app.get(UnitOfWork).run(async (manager) => {
    const id = await yard.app.get(Outbox, { strict: false }).post(manager, {
      ...{ kind: 'digest', subjectKey: 'hostile', personId, toName: 'Someone', toAddress: address },
      ...{ subject: 'A sling falls due', plainText: 'SL-1', html: '<p>SL-1</p>', at },
    });
    await manager.update(MailEntity, { id }, { state: 'dead', settledAt: at });
    return id;
  });
}

async function itemRoutes(yard: GearYard): Promise<WriteRoute[]> {
  const item = () => {
    const { tag, ...rest } = lifter(yard.storeId, DETAILS);
    return { tag: `${String(tag)}-H`, ...rest };
  };
  const [edited, inspected, hurt] = [await yard.newItem(DETAILS), await yard.newItem(), await yard.newItem()];
  const examined = await yard.newItem();
  const spare = async () => (await yard.newItem()).id;
  const doneOn = yard.day(-3);
  const inspection = {
    type: 'thoroughExamination',
    doneOn,
    outcome: 'fit',
    nextDueOn: yard.day(100),
    doneBy: 'A. Examiner',
    reportNumber: 'R-1',
    remarks: 'none',
    release: false,
  };
  return [
    post('/api/items', item()),
    {
      method: 'PATCH',
      path: '/api/items/{id}',
      url: `/api/items/${edited.id}`,
      body: item(),
      etagOf: `/api/items/${edited.id}`,
    },
    post('/api/items/{id}/inspections', inspection, inspected.id),
    post(
      '/api/items/{id}/examinations',
      examination(examined.tag, yard.day(0), worn(yard.day(0), 30)),
      examined.id,
    ),
    post(
      '/api/items/{id}/defects',
      { severity: 'dangerByDate', description: 'a cut', lastDayOfUse: yard.day(9) },
      hurt.id,
    ),
    post('/api/items/{id}/checks', checkInput(yard), (await yard.newItem()).id),
    post('/api/notices/{id}/settled', {}, await noticeOf(yard)),
    post('/api/items/{id}/events', { type: 'dropped', happenedOn: doneOn, remarks: 'from a truck' }, hurt.id),
    post('/api/items/{id}/documents', {}, hurt.id),
    post('/api/items/{id}/quarantine', REASON, await spare()),
    post('/api/items/{id}/repair', REASON, await spare()),
    post('/api/items/{id}/scrap', { ...REASON, howMadeUnusable: 'cut through' }, await spare()),
    post('/api/items/{id}/found', {}, await spare()),
  ];
}

/** A check with every field that one may have. */
function checkInput(yard: GearYard): object {
  const [first, ...rest] = checkAnswers(yard, 'panelLifter');
  const remarks = 'scratched';
  return {
    checkedAt: yard.app.get(Clock).now(),
    offsetMinutes: 0,
    answers: [{ ...first, remarks }, ...rest],
  };
}

/** The number of the notice of a danger just reported. */
async function noticeOf(yard: GearYard): Promise<number> {
  const { id } = await yard.newItem();
  const danger = { severity: 'immediateDanger', description: 'jaw cracked' };
  await yard.crew.post(`/api/items/${id}/defects`).send(danger).expect(201);
  const { body } = await yard.manager.get('/api/notices').expect(200);
  return body[0].id;
}

async function jobRoutes(yard: GearYard): Promise<WriteRoute[]> {
  for (const tag of ['HO-1', 'HO-2', 'HO-3']) await yard.gear(tag);
  const [edited, chosen, handedOut] = [
    await yard.job(),
    await yard.job(),
    await yard.job({ lifters: 2, from: 0, to: 9 }),
  ];
  const [cancelled, lent] = [await yard.job({ from: 40, to: 45 }), await yard.job({ from: 50, to: 55 })];
  for (const id of [handedOut, lent]) await yard.storeman.post(`/api/jobs/${id}/reservation`).expect(201);
  const booking = await yard.storeman.get(`/api/jobs/${lent}/booking`).expect(200);
  const [booked] = booking.body.items as { id: number; itemId: number; tag: string }[];
  const csv = 'name,height [mm],width [mm],thickness [mm],mass [kg],count\nA1,7450,1210,112,478,4\n';
  const choice = {
    itemId: booked?.itemId,
    choice: 'pin',
    lineKey: 'panelLifter',
    reason: 'nearest the door',
  };
  // The same fields as PATCH takes; those of the lines are tried there.
  const { loadOutDay, backDay, storeId, counts, panels } = jobInput(yard.storeId, yard.day, {
    from: 70,
    to: 72,
  });
  const changed = (path: string, id: number, body: unknown): WriteRoute => ({
    ...post(path, body, id),
    etagOf: `/api/jobs/${id}`,
  });
  return [
    post('/api/jobs', { ...jobInput(yard.storeId, yard.day), addedLines: [ADDED_LINE] }),
    {
      ...changed('/api/jobs/{id}', edited, {
        ...jobInput(yard.storeId, yard.day, { from: 60, to: 62 }),
        addedLines: [ADDED_LINE],
      }),
      method: 'PATCH',
    },
    changed('/api/jobs/{id}/what-if', chosen, { loadOutDay, backDay, storeId, counts, panels }),
    changed('/api/jobs/{id}/panels-csv', chosen, { csv }),
    changed('/api/jobs/{id}/choices', chosen, choice),
    changed('/api/jobs/{id}/cancellation', cancelled, {}),
    changed('/api/jobs/{id}/reservation', chosen, {}),
    post('/api/jobs/{id}/hand-outs', { tag: 'HO-1', insteadOf: 1 }, handedOut),
    post('/api/jobs/{id}/returns', { tag: 'HO-1', condition: 'good', remarks: 'muddy' }, handedOut),
    post('/api/jobs/{id}/releases', { bookedItemId: booked?.id }, lent),
    post('/api/jobs/{id}/lifts', { onDay: yard.day(0), lifts: 12 }, handedOut),
    post('/api/jobs/{id}/events', { type: 'dropped', happenedOn: yard.day(0), remarks: 'fell' }, handedOut),
    {
      ...post('/api/trace/batches/{batch}/quarantine', { maker: 'Harrow Works', ...REASON }),
      url: '/api/trace/batches/none/quarantine',
    },
  ];
}

async function importRoutes(client: HostileClient): Promise<WriteRoute[]> {
  const file = multipartCsv('Tag,Kind,Maker,Serial,WLL kg\nXX-1,panel lifter,Harrow Works,77 A,500\n');
  const made = await client.raw({ method: 'POST', url: '/api/register/import', ...file });
  const { uploadId } = JSON.parse(made.text) as { uploadId: string };
  const path = '/api/register/import';
  const mapping = {
    columns: ['tag', 'kind', 'maker', 'serial', ''],
    dateOrder: 'dayFirst',
    decimalMark: 'point',
    lengthUnit: 'm',
    massUnit: 'kg',
    forceUnit: 'daN',
    kinds: [{ word: 'grab', kind: 'panelLifter' }],
    stores: [{ word: 'here', storeId: 1 }],
    storeId: 1,
    reportsOnFile: false,
  };
  return [
    post(path, {}),
    { ...post(`${path}/{uploadId}/mapping`, mapping), url: `${path}/${uploadId}/mapping` },
    { ...post(`${path}/{uploadId}/accept`, { mode: 'soundRows' }), url: `${path}/${uploadId}/accept` },
  ];
}

function post(path: string, body: unknown, id?: number): WriteRoute {
  return { method: 'POST', path, url: path.replace('{id}', String(id)), body };
}

const DETAILS = {
  kind: 'ratchetStrap',
  markings: [{ measure: 'lashingCapacity', value: '2500', unit: 'daN', condition: 'straight' }],
  dimensions: { lengthM: '6' },
  manufacturedOn: '2024-02-29',
  firstUsedOn: '2024-03-01',
  declarationOn: '2024-02-29',
  writtenSchemes: [{ type: 'thoroughExamination', months: 3, reference: 'S-1' }],
  notes: 'yellow',
  serialUnknown: false,
  acceptLookAlike: true,
  labelLegible: true,
  certificateOnFile: true,
};

const ADDED_LINE = {
  label: 'More straps',
  kind: 'ratchetStrap',
  duty: 'lashing',
  quantity: 1,
  rating: { value: '1000', unit: 'daN' },
  lengthM: '5',
  reason: 'gusts',
};
