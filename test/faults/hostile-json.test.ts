import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { hostileClient, type HostileClient, type RawAnswer } from '../support/hostile-client.js';
import { writeRoutes, WRITE_ROUTES, type WriteRoute } from '../support/hostile-routes.js';
import { HOSTILE_VALUES, placesIn, withValueAt } from '../support/hostile-values.js';
import { expectNoDoubleBooking, expectWholeLedger } from '../support/invariants.js';
import { expectProblemDetails } from '../support/problem-details.js';

/** Bodies as text: those that are no JSON, and those whose keys reach for what objects inherit. */
const RAW_BODIES = [
  '',
  ' ',
  '{',
  '{"name":}',
  'null',
  '[]',
  '[{}]',
  '"text"',
  '7',
  'true',
  'NaN',
  '{"__proto__":{"polluted":true}}',
  '{"constructor":{"prototype":{"polluted":true}}}',
  '{"counts":{"__proto__":{"polluted":true}}}',
  '{"toString":1,"valueOf":null}',
  `{"name":"${'x'.repeat(1_100_000)}"}`,
  '['.repeat(50_000),
  `${'['.repeat(50_000)}${']'.repeat(50_000)}`,
  `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`,
];

describe.each(ENGINES)('hostile JSON on %s', (engine) => {
  let yard: GearYard;
  let client: HostileClient;
  let routes: WriteRoute[];

  beforeAll(async () => {
    yard = await startGearYard(engine);
    client = await hostileClient(yard.app, ['manager', 'storeman', 'competentPerson']);
    routes = await writeRoutes(yard, client);
  });
  afterAll(() => yard.close());

  const routeOf = (name: string): WriteRoute => {
    const route = routes.find(({ method, path }) => `${method} ${path}` === name);
    if (!route) throw new Error(`no route ${name}`);
    return route;
  };

  /** Sends with the version that the record has now, where the route asks for one. */
  const send = async ({ method, url, etagOf }: WriteRoute, body: unknown): Promise<RawAnswer> => {
    const etag = etagOf && (await client.raw({ method: 'GET', url: etagOf })).headers['etag'];
    return client.json(method, url, body, typeof etag === 'string' ? { 'if-match': etag } : {});
  };

  it('is tried on every route of the API that writes', async () => {
    const description = JSON.parse((await client.raw({ method: 'GET', url: '/api/openapi.json' })).text) as {
      paths: Record<string, object>;
    };
    const described = Object.entries(description.paths).flatMap(([path, methods]) =>
      Object.keys(methods).flatMap((method) => (method === 'get' ? [] : [`${method.toUpperCase()} ${path}`])),
    );
    expect([...WRITE_ROUTES, 'POST /api/session/end'].sort()).toEqual(described.sort());
  });

  it('starts from bodies whose fields are right', async () => {
    // These two take files, not JSON.
    const uploads = ['/api/register/import', '/api/items/{id}/documents'];
    const sound = routes.filter(({ path }) => !uploads.includes(path));
    const refused: string[] = [];
    for (const route of sound) {
      const answer = await send(route, route.body);
      if (answer.status === 400) refused.push(`${route.path}: ${answer.text}`);
    }
    expect(refused).toEqual([]);
  });

  it.each(WRITE_ROUTES)('%s refuses what is no JSON object of its fields', async (name) => {
    const { method, url } = routeOf(name);
    for (const payload of RAW_BODIES) {
      const headers = { 'content-type': 'application/json', 'if-match': '"v1"' };
      expectProblemDetails(await client.raw({ method, url, headers, payload }), payload.slice(0, 60));
    }
    for (const type of ['text/plain', 'application/xml', 'text/csv', 'nonsense']) {
      const answer = await client.raw({ method, url, headers: { 'content-type': type }, payload: '{}' });
      expectProblemDetails(answer, type);
    }
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
  });

  it.each(WRITE_ROUTES)('%s bears a wrong value in every field, and names the field', async (name) => {
    const route = routeOf(name);
    const places = placesIn(route.body);
    // A large body gets every value too, each at every fourth of its places.
    const stride = places.length > 12 ? 4 : 1;
    for (const [turn, place] of places.entries()) {
      for (const value of HOSTILE_VALUES.filter((_, index) => (index + turn) % stride === 0)) {
        const answer = await send(route, withValueAt(route.body, place, value));
        const what = `${place.join('.')} = ${JSON.stringify(value).slice(0, 60)}`;
        const problem = expectProblemDetails(answer, what);
        if (problem?.code === 'bad_input') expect(problem.errors?.length, what).toBeGreaterThan(0);
      }
    }
    const unknown = await send(route, { ...Object(route.body), surprise: 1 });
    expectProblemDetails(unknown, 'an unknown field');
  });

  it('bears every wrong number of an inspection to correct', async () => {
    const route = routeOf('POST /api/items/{id}/inspections');
    for (const supersedesId of HOSTILE_VALUES) {
      const answer = await send(route, { ...Object(route.body), supersedesId });
      expect(expectProblemDetails(answer, JSON.stringify(supersedesId))?.code).toBe('bad_input');
    }
  });

  it.each(WRITE_ROUTES)('%s bears bodies made by chance', async (name) => {
    const route = routeOf(name);
    const places = placesIn(route.body);
    const anyBody = fc.oneof(
      fc.json({ maxDepth: 3 }).map((text) => JSON.parse(text) as unknown),
      fc
        .tuple(fc.constantFrom([], ...places), fc.jsonValue({ maxDepth: 2 }))
        .map(([place, value]) => withValueAt(route.body, place, value)),
    );
    const property = fc.asyncProperty(anyBody, async (body) => {
      expectProblemDetails(await client.json(route.method, route.url, body, { 'if-match': '"v1"' }), '');
    });
    await fc.assert(property, { numRuns: 60, seed: 20261125 });
  });

  it.each(WRITE_ROUTES.filter((name) => name.includes('{')))('%s finds no made-up numbers', async (name) => {
    const { method, path, body } = routeOf(name);
    for (const id of [
      '0',
      '-1',
      '2147483648',
      '9007199254740992',
      '9'.repeat(30),
      'abc',
      '1e3',
      '%00',
      '1.5',
    ]) {
      const url = path.replace(/\{\w+\}/, id);
      const answer = await client.json(method, url, body, { 'if-match': '"v1"' });
      expectProblemDetails(answer, url);
      expect(answer.status, url).toBeGreaterThanOrEqual(400);
    }
  });

  it('wants the version that a change was made from, and no other', async () => {
    const asking = routes.filter(
      ({ etagOf, path }) => etagOf !== undefined && !path.endsWith('/reservation'),
    );
    for (const { method, url, body } of asking) {
      const missing = await client.json(method, url, body);
      expect(missing.status, url).toBe(428);
      for (const [tag, status] of [
        ['"v999999"', 412],
        ['*', 400],
        ['v1', 400],
        ['"v99999999999999999999"', 400],
        ['"v-1"', 400],
      ] as const) {
        const answer = await client.json(method, url, body, { 'if-match': tag });
        // A cancelled job says so first, whatever version is named.
        expect([status, 409], `${url} ${tag}`).toContain(answer.status);
        expectProblemDetails(answer, url);
      }
    }
  });

  it('refuses every write that another site sends', async () => {
    for (const { method, url, body } of routes) {
      for (const headers of [{ origin: 'https://elsewhere.example' }, { 'sec-fetch-site': 'cross-site' }]) {
        const problem = expectProblemDetails(await client.json(method, url, body, headers), url);
        expect(problem?.code).toBe('foreign_origin');
      }
    }
  });

  it('leaves a whole history and no item on two jobs on one day', async () => {
    expect(await expectWholeLedger(yard.app)).toBeGreaterThan(0);
    await expectNoDoubleBooking(yard.app);
  });
});
