import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { Clock } from '../../src/clock.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { SYSTEM_ACTOR } from '../../src/people/actor.js';
import { ImportService } from '../../src/register/import/import.service.js';
import { ENGINES } from '../support/engines.js';
import { faultList, handOver, makeStore, stopClock } from '../support/import-client.js';
import { startServer, type TestServer } from '../support/test-server.js';

const HEADINGS = 'Tag,Kind,Make,Serial,WLL,Last exam,Notes';

/** A list with these rows under the usual headings. */
function list(...rows: string[]): string {
  return [HEADINGS, ...rows].join('\r\n');
}

describe.each(ENGINES)('import on %s', (engine) => {
  let server: TestServer;
  let storeman: TestAgent;

  beforeAll(async () => {
    server = await startServer(engine);
    stopClock(server);
    storeman = await server.signedIn('storeman');
    await makeStore(server, 'North store');
  });
  afterAll(() => server.close());

  async function take(csv: string | Buffer, mode = 'allOrNothing') {
    const { uploadId } = await handOver(storeman, csv);
    return storeman.post(`/api/register/import/${uploadId}/accept`).send({ mode });
  }

  it('records the examination of the type that the place asks for, and the file in the ledger', async () => {
    const answer = await take(list('SB-A1,Spreader bar,Norfell,X-900,1.5 t,2026-10-01,'));
    expect(answer.body).toEqual({ taken: 1, unchanged: 0, faulty: 0, skipped: 0 });
    const entries = await server.app.get(Ledger).newest(3);
    expect(entries.map(({ action }) => action)).toEqual([
      'register.imported',
      'inspection.recorded',
      'item.created',
    ]);
    expect(entries[0]?.detail).toMatchObject({ fileName: 'list.csv', taken: 1, faulty: 0 });
    // LOLER 1998 reg 9: lifting accessories are thoroughly examined.
    expect(entries[1]?.detail).toMatchObject({
      type: 'thoroughExamination',
      doneOn: '2026-10-01',
      outcome: 'fit',
    });
    expect((await server.app.get(Ledger).verify()).fault).toBeUndefined();
  });

  it('never overwrites: another content under a tag of the register is a fault that names what differs', async () => {
    await take(list('SB-B1,Spreader bar,Norfell,X-910,2 t,2026-10-01,first'));
    const report = await handOver(
      storeman,
      list(
        'SB-B1,Spreader bar,Norfell,X-910,2000 kg,2026-10-01,',
        'sb b1,Spreader bar,NORFELL,x 910,2.5 t,2026-10-01,',
        'SB-B2,Spreader bar,Norfell,X-910,2 t,2026-10-01,',
        'SB-B3,Spreader bar,Norfell,X-9I0,2 t,2026-10-01,',
      ),
    );
    expect(report.counts).toMatchObject({ sound: 0, faulty: 4 }); // all four clash in the file
    const alone = await handOver(storeman, list('SB-B1,Spreader bar,Norfell,X-910,2000 kg,2026-10-01,'));
    expect(alone.counts).toMatchObject({ unchanged: 1, faulty: 0 });
    const changed = await handOver(storeman, list('sb b1,Spreader bar,NORFELL,x 910,2.5 t,2026-10-01,'));
    expect(changed.faults).toEqual([
      expect.objectContaining({ code: 'tag_in_register', sentence: expect.stringContaining('rating') }),
    ]);
    const later = await handOver(storeman, list('SB-B1,Spreader bar,Norfell,X-910,2 t,2026-11-01,'));
    expect(later.faults).toEqual([
      expect.objectContaining({ sentence: expect.stringContaining('day of examination') }),
    ]);
    expect(
      faultList(await handOver(storeman, list('SB-B2,Spreader bar,Norfell,X-910,2 t,2026-10-01,'))),
    ).toEqual(['2 Serial serial_in_register']);
    expect(
      faultList(await handOver(storeman, list('SB-B3,Spreader bar,Norfell,X-9I0,2 t,2026-10-01,'))),
    ).toEqual(['2 Serial looks_like_register']);
  });

  it('takes ten thousand rows but the one with a bad cell', async () => {
    const rows = Array.from(
      { length: 10_000 },
      (_, n) =>
        `T${n},Panel trolley,Brantwick,N7${String(n).padStart(5, '0')},${n === 4321 ? '450 ton' : '450 kg'},2026-03-01,`,
    );
    const report = await handOver(storeman, list(...rows));
    expect(faultList(report)).toEqual(['4323 WLL ambiguous_ton']);
    const refused = await storeman
      .post(`/api/register/import/${report.uploadId}/accept`)
      .send({ mode: 'allOrNothing' });
    expect(refused.status).toBe(409);
    const taken = await storeman
      .post(`/api/register/import/${report.uploadId}/accept`)
      .send({ mode: 'soundRows' });
    expect(taken.body).toMatchObject({ taken: 9_999, faulty: 1 });
    expect((await handOver(storeman, list(...rows))).counts).toMatchObject({
      unchanged: 9_999,
      faulty: 1,
      sound: 0,
    });
  }, 120_000);

  it('leaves nothing behind when it fails half-way', async () => {
    const spy = vi
      .spyOn(Ledger.prototype as unknown as { append: () => Promise<void> }, 'append')
      .mockRejectedValueOnce(new Error('the power went'));
    const answer = await take(list('SB-C1,Spreader bar,Norfell,X-920,2 t,2026-10-01,'));
    expect(answer.status).toBe(500);
    spy.mockRestore();
    const report = await handOver(storeman, list('SB-C1,Spreader bar,Norfell,X-920,2 t,2026-10-01,'));
    expect(report.counts).toMatchObject({ sound: 1, unchanged: 0 });
  });

  it('keeps a mapping for the next file with the same headings', async () => {
    const csv = 'A;B;C;D;E\r\nK1;Klemme;Norfell;K-771;800\r\n';
    const first = await handOver(storeman, csv);
    expect(first.missing).toEqual(['tag', 'kind', 'maker', 'serial']);
    const mapping = {
      columns: ['tag', 'kind', 'maker', 'serial', 'rating'],
      kinds: [{ word: 'Klemme', kind: 'panelLifter' }],
      massUnit: 'kg',
      storeId: (await handOver(storeman, HEADINGS)).mapping.storeId,
    };
    const chosen = await storeman
      .post(`/api/register/import/${first.uploadId}/mapping`)
      .send(mapping)
      .expect(200);
    expect(chosen.body.faults).toEqual([]);
    const next = await handOver(storeman, csv.replace('K1', 'K2').replace('K-771', 'K-772'));
    expect(next.counts).toMatchObject({ sound: 1, faulty: 0 });
    expect(next.notices).toContainEqual(expect.objectContaining({ cell: '800', code: 'unit_assumed' }));
  });

  it('refuses a mapping that names a field twice, too few columns, or an unknown kind', async () => {
    const { uploadId } = await handOver(storeman, 'P;Q\r\n1;2\r\n');
    const send = (body: object) => storeman.post(`/api/register/import/${uploadId}/mapping`).send(body);
    expect((await send({ columns: ['tag', 'tag'] })).body.errors).toEqual([
      expect.objectContaining({ field: 'columns' }),
    ]);
    expect((await send({ columns: ['tag'] })).status).toBe(400);
    expect((await send({ columns: ['tag', 'nonsense'] })).status).toBe(400);
    expect((await send({ columns: ['tag', ''], kinds: [{ word: 'a', kind: 'rocket' }] })).status).toBe(400);
    expect((await send({ columns: ['tag', ''], storeId: 99_999 })).status).toBe(400);
  });

  it('does not bring back into use what the file says is out of it', async () => {
    const report = await handOver(
      storeman,
      `${HEADINGS},Condition\r\nSB-D1,Spreader bar,Norfell,X-930,2 t,,,scrapped`,
    );
    expect(faultList(report)).toEqual(['2 Condition not_in_service']);
  });

  it('shows a file to the one who handed it over, to and to storemen only', async () => {
    const { uploadId } = await handOver(storeman, list('SB-E1,Spreader bar,Norfell,X-940,2 t,,'));
    const other = await server.signedIn('storeman');
    expect((await other.get(`/api/register/import/${uploadId}`)).status).toBe(404);
    const crew = await server.signedIn('crew');
    const sent = await crew.post('/api/register/import').attach('file', Buffer.from(HEADINGS), 'a.csv');
    expect(sent.status).toBe(403);
    expect((await crew.get('/api/register/export.csv')).status).toBe(403);
    expect((await storeman.get('/api/register/import/not-a-number')).status).toBe(400);
  });

  it('keeps a file for a day', async () => {
    const imports = server.app.get(ImportService);
    const { upload } = await imports.dryRun(SYSTEM_ACTOR, {
      fileName: 'a.csv',
      bytes: Buffer.from(HEADINGS),
    });
    const clock = vi.spyOn(server.app.get(Clock), 'now');
    clock.mockReturnValue('2026-11-26T12:00:00.000Z');
    expect((await imports.report(SYSTEM_ACTOR, upload.id)).upload.fileName).toBe('a.csv');
    clock.mockReturnValue('2026-11-26T12:00:00.001Z');
    await expect(imports.report(SYSTEM_ACTOR, upload.id)).rejects.toMatchObject({ code: 'not_found' });
    stopClock(server);
  });

  it('refuses a file over the limit, and a request without one', async () => {
    const answer = await storeman
      .post('/api/register/import')
      .attach('file', Buffer.alloc(50 * 1024 * 1024, 'a'), 'big.csv');
    expect(answer.status).toBe(413);
    expect(answer.body.code).toBe('file_too_large');
    expect((await storeman.post('/api/register/import').send({})).status).toBe(400);
    expect(
      (await storeman.post('/api/register/import').attach('file', Buffer.alloc(0), 'empty.csv')).status,
    ).toBe(400);
  });

  describe('its pages', () => {
    let uploadId: string;
    beforeEach(async () => {
      ({ uploadId } = await handOver(
        storeman,
        list('SB-F1,Spreader bar,Norfell,X-950,2 ton,,', 'SB-F2,Spreader bar,Norfell,X-951,2 t,,'),
      ));
    });
    afterEach(() => vi.clearAllMocks());

    it('takes a file, shows what is wrong and takes the sound rows', async () => {
      const form = await storeman.get('/register/import').expect(200);
      expect(form.text).toContain('enctype="multipart/form-data"');
      const sent = await storeman
        .post('/register/import')
        .attach('file', Buffer.from(list('SB-F9,Rocket,N,X-9,2 t,,')), 'b.csv')
        .expect(303);
      expect(sent.headers['location']).toMatch(/^\/register\/import\/[0-9a-f-]{36}$/);
      const report = await storeman.get(`/register/import/${uploadId}`).expect(200);
      expect(report.text).toContain('A ton may be 1000 kg, 907 kg or 1016 kg.');
      expect(report.text).toContain('Take the 1 sound row, give me the 1 faulty back');
      const taken = await storeman
        .post(`/register/import/${uploadId}/accept`)
        .type('form')
        .send({ mode: 'soundRows' })
        .expect(303);
      expect(taken.headers['location']).toBe(`/register/import/${uploadId}?taken=1`);
      const after = await storeman.get(taken.headers['location'] ?? '').expect(200);
      expect(after.text).toContain('1 row was taken into the register.');
    });

    it('keeps the choices of its form', async () => {
      const columns = ['tag', 'kind', 'maker', 'serial', 'rating', 'lastExamined', ''];
      const form = {
        'columns[]': columns,
        dateOrder: 'monthFirst',
        reportsOnFile: 'true',
        'kinds[0].word': 'rocket',
        'kinds[0].kind': '',
      };
      await storeman.post(`/register/import/${uploadId}/mapping`).type('form').send(form).expect(303);
      const { body } = await storeman.get(`/api/register/import/${uploadId}`).expect(200);
      expect(body.mapping).toMatchObject({
        columns,
        dateOrder: 'monthFirst',
        reportsOnFile: true,
        kinds: [],
      });
      await storeman
        .post(`/register/import/${uploadId}/mapping`)
        .type('form')
        .send({ 'columns[]': ['tag'] })
        .expect(400);
    });

    it('says what is wrong with a file that is no table', async () => {
      const answer = await storeman
        .post('/register/import')
        .attach('file', Buffer.from([0, 1, 2, 3]), 'x.csv')
        .expect(422);
      expect(answer.text).toContain('The file cannot be read as a table.');
    });
  });
});
