import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { guardCell, unguardCell } from '../../src/register/export/cell-guard.js';
import { readTable } from '../../src/register/import/read-table.js';
import { ENGINES } from '../support/engines.js';
import { handOver, makeStore, stopClock } from '../support/import-client.js';
import { startServer, type TestServer } from '../support/test-server.js';

describe('the guard against formulas', () => {
  // OWASP ASVS 5.0 requirement 1.2.10 names these signs.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '\0x', "'=1", "''=1"])(
    'goes before %j and comes off again',
    (text) => {
      expect(guardCell(text)).toBe(`'${text}`);
      expect(unguardCell(guardCell(text))).toBe(text);
    },
  );

  it.each(['1=1', 'a-b', "'tis", ' =1', ''])('leaves %j alone', (text) => {
    expect(guardCell(text)).toBe(text);
    expect(unguardCell(text)).toBeUndefined();
  });
});

const ITEMS = [
  {
    tag: '=cmd',
    kind: 'sling',
    maker: '+Maker',
    serial: '-77',
    notes: '@note\r\nwith "quotes", and more',
    rating: ['1.234', 't'],
    dimensions: { lengthM: '2.4384' },
  },
  {
    tag: "'=odd",
    kind: 'panelLifter',
    maker: 'Norfell',
    serial: 'S-1',
    notes: 'ünïcode',
    rating: ['800', 'kg'],
    dimensions: { jawMinimumMm: '60', jawMaximumMm: '140' },
  },
  {
    tag: '007',
    kind: 'ratchetStrap',
    maker: 'Norfell',
    serial: '00012345678901234567',
    notes: '-5 at least',
    rating: ['2500', 'daN'],
    dimensions: { lengthM: '8' },
  },
];

describe.each(ENGINES)('export on %s', (engine) => {
  let server: TestServer;
  let storeman: TestAgent;

  beforeAll(async () => {
    server = await startServer(engine);
    stopClock(server);
    storeman = await server.signedIn('storeman');
    const storeId = await makeStore(server, 'North, store');
    for (const {
      rating: [value, unit],
      ...item
    } of ITEMS) {
      const measure = item.kind === 'ratchetStrap' ? 'lashingCapacity' : 'workingLoadLimit';
      const markings = [{ measure, value, unit, condition: 'straight pull' }];
      const made = await storeman
        .post('/api/items')
        .send({ ...item, storeId, markings, manufacturedOn: '2024-02-29' });
      expect(made.body).toMatchObject({ tag: item.tag });
    }
    const unknown = {
      tag: 'U1',
      kind: 'safetyLine',
      maker: 'Norfell',
      serialUnknown: true,
      labelLegible: false,
      storeId,
    };
    await storeman.post('/api/items').send(unknown).expect(201);
  });
  afterAll(() => server.close());

  async function download(address: string): Promise<Buffer> {
    const answer = await storeman
      .get(address)
      .buffer(true)
      .parse((response, done) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () => done(null, Buffer.concat(chunks)));
      });
    expect(answer.status).toBe(200);
    expect(answer.headers['content-disposition']).toContain('attachment');
    return answer.body;
  }

  it.each(['/register/export.csv', '/api/register/export.xlsx'])(
    'of %s comes back by import as it went',
    async (address) => {
      const bytes = await download(address);
      const report = await handOver(storeman, bytes, 'register.bin');
      expect(report.faults).toEqual([]);
      expect(report.counts).toEqual({ rows: 4, sound: 0, unchanged: 4, faulty: 0, skipped: 0 });
    },
  );

  it('enters all of it in an empty register', async () => {
    const bytes = await download('/api/register/export.csv');
    const other = await startServer(engine);
    try {
      stopClock(other);
      await makeStore(other, 'North, store');
      const agent = await other.signedIn('storeman');
      const { uploadId } = await handOver(agent, bytes);
      const taken = await agent
        .post(`/api/register/import/${uploadId}/accept`)
        .send({ mode: 'allOrNothing' })
        .expect(200);
      expect(taken.body).toMatchObject({ taken: 4, faulty: 0 });
      expect((await agent.get('/api/register/export.csv')).text).toBe(bytes.toString());
    } finally {
      await other.close();
    }
  });

  it('leaves no cell that a spreadsheet would calculate, and ends lines as RFC 4180 asks', async () => {
    const text = (await download('/register/export.csv')).toString();
    expect(text.startsWith('\uFEFFTag,Kind,Maker,Serial number,Batch,Rating,Length,')).toBe(true);
    expect(text).toContain("\r\n'=cmd,Sling,'+Maker,'-77,,1.2340 t (straight pull),2.4384 m,");
    expect(text).toContain(`"'@note\r\nwith ""quotes"", and more"`);
    expect(text.endsWith('\r\n')).toBe(true);
    const sheet = await readTable(await download('/register/export.xlsx'));
    expect(sheet.rows.flatMap(({ cells }) => cells).filter(({ is }) => is !== 'text')).toEqual([]);
  });
});
