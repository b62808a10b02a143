import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { faultList, handOver, makeStore, sample, stopClock } from '../support/import-client.js';
import { startServer, type TestServer } from '../support/test-server.js';

// What is wrong with the sample was read off the file by eye, row by row; rows as a spreadsheet numbers them.
const NORTH_FAULTS = [
  '4 No. duplicate_tag',
  '6 Serial duplicate_serial',
  '7 Serial duplicate_serial',
  '11 Serial blank_cell',
  '13 SWL / LC ambiguous_ton',
  '15 SWL / LC wrong_unit',
  '19 Last exam not_a_day',
  '22 Last exam future_day',
  '25 No. duplicate_tag',
  '29 Serial serial_looks_alike',
  '30 Serial serial_looks_alike',
  '34 SWL / LC negative',
  '39 SWL / LC not_a_quantity',
  '50 SWL / LC formula',
  '64 Item unknown_kind',
];
/** Rows whose length is a plain 9.0. */
const NORTH_WITHOUT_UNIT = [6, 9, 10, 12, 16, 19, 21, 23, 27, 44, 47];

describe.each(ENGINES)('the sample files on %s', (engine) => {
  let server: TestServer;
  let storeman: TestAgent;

  beforeAll(async () => {
    server = await startServer(engine);
    stopClock(server);
    storeman = await server.signedIn('storeman');
  });
  afterAll(() => server.close());

  it('asks for the stores first, and still names the other faults', async () => {
    const report = await handOver(storeman, sample('register-north.csv'));
    expect(report.counts).toMatchObject({ rows: 139, sound: 0, faulty: 139, skipped: 1 });
    expect(faultList(report)).toContain('5 Where unknown_store');
    expect(faultList(report)).toContain('22 Last exam future_day');
  });

  it('names every fault of the north register by row and cell', async () => {
    await makeStore(server, 'North store');
    await makeStore(server, 'Harbour yard');
    const report = await handOver(storeman, sample('register-north.csv'));
    const plain = NORTH_WITHOUT_UNIT.map((row) => `${row} Length unit_missing`);
    expect(faultList(report).sort()).toEqual([...NORTH_FAULTS, ...plain].sort());
    const chosen = await storeman
      .post(`/api/register/import/${report.uploadId}/mapping`)
      .send({ columns: report.mapping.columns, lengthUnit: 'm' })
      .expect(200);
    expect(faultList(chosen.body).sort()).toEqual([...NORTH_FAULTS].sort());
    expect(chosen.body.counts).toEqual({ rows: 139, sound: 124, unchanged: 0, faulty: 15, skipped: 1 });
    expect(chosen.body).toMatchObject({ dateOrder: 'dayFirst', decimalMark: 'point' });
    const trolly = chosen.body.faults.find(({ row }: { row: number }) => row === 64);
    expect(trolly).toMatchObject({ cell: 'Trolly', sentence: expect.stringContaining('trolley') });
    expect(chosen.body.notices).toContainEqual(
      expect.objectContaining({ row: 37, cell: '8 ft', code: 'length_converted' }),
    );
    const inTonnes = chosen.body.notices.filter(
      ({ code }: { code: string }) => code === 'mass_read_as_force',
    );
    expect(inTonnes.map(({ row }: { row: number }) => row)).toEqual([27, 30, 31, 40, 46]);
    expect(chosen.body.notices).toContainEqual(
      expect.objectContaining({ row: 143, cell: 'Total', code: 'total_row' }),
    );
    expect(chosen.body.notices).toContainEqual(expect.objectContaining({ row: 54, code: 'never_examined' }));
    expect(chosen.body.notices).toContainEqual(
      expect.objectContaining({ row: 4, code: 'note_to_look_into' }),
    );
  });

  it('takes nothing while all or nothing is asked, then the sound rows, and gives the faulty ones back', async () => {
    const { uploadId } = await handOver(storeman, sample('register-north.csv'));
    const refused = await storeman
      .post(`/api/register/import/${uploadId}/accept`)
      .send({ mode: 'allOrNothing' })
      .expect(409);
    expect(refused.body.code).toBe('not_allowed_now');
    expect(
      (await storeman.get('/api/register/export.csv').expect(200)).text.trimEnd().split('\r\n'),
    ).toHaveLength(1);
    const taken = await storeman
      .post(`/api/register/import/${uploadId}/accept`)
      .send({ mode: 'soundRows' })
      .expect(200);
    expect(taken.body).toMatchObject({ taken: 124, unchanged: 0, faulty: 15, skipped: 1 });
    const mend = (await storeman.get(taken.body.mendFile).expect(200)).text;
    const lines = mend.trimEnd().split('\r\n');
    expect(lines).toHaveLength(16);
    expect(lines[0]).toBe('\uFEFFNo.,Item,Make,Serial,SWL / LC,Length,Last exam,Where,Notes,What is wrong');
    expect(mend).toContain("PL003,Panel lifter,norfell,K48039,'=600+200,");
  });

  it('changes nothing when the same file comes again', async () => {
    const { uploadId, counts } = await handOver(storeman, sample('register-north.csv'));
    expect(counts).toEqual({ rows: 139, sound: 0, unchanged: 124, faulty: 15, skipped: 1 });
    const before = await storeman.get('/api/register/export.csv').expect(200);
    const again = await storeman
      .post(`/api/register/import/${uploadId}/accept`)
      .send({ mode: 'soundRows' })
      .expect(200);
    expect(again.body).toMatchObject({ taken: 0, unchanged: 124 });
    expect((await storeman.get('/api/register/export.csv').expect(200)).text).toBe(before.text);
  });

  it('takes the rows of the file to mend once they are mended', async () => {
    const { uploadId } = await handOver(storeman, sample('register-north.csv'));
    const mend = (await storeman.get(`/api/register/import/${uploadId}/to-mend.csv`).expect(200)).text;
    const report = await handOver(
      storeman,
      mend.replace('TR012,Trolly,', 'TR012,Trolley,').replace('2 ton', '2000 daN'),
    );
    expect(report.counts).toMatchObject({ rows: 15, sound: 2, faulty: 13 });
  });

  it('reads the continental register: Latin-1, semicolons, decimal commas, dotted dates, German', async () => {
    await makeStore(server, 'Halle 2', 'eu');
    const report = await handOver(storeman, sample('register-continental.csv'));
    expect(report.faults).toEqual([]);
    expect(report.counts).toEqual({ rows: 60, sound: 60, unchanged: 0, faulty: 0, skipped: 0 });
    expect(report.decimalMark).toBe('comma');
    const taken = await storeman
      .post(`/api/register/import/${report.uploadId}/accept`)
      .send({ mode: 'allOrNothing' });
    expect(taken.body).toMatchObject({ taken: 60, faulty: 0 });
    const register = (await storeman.get('/api/register/export.csv').expect(200)).text;
    expect(register).toContain('Z-0001,Panel lifter,Müggel & Söhne,514002,,0.75 t,');
    expect(register).toContain('Z-0002,Ratchet strap,Müggel & Söhne,198702,,2500 daN,8.5 m,');
    expect(register).toContain('"Haken leicht\nangerostet"');
  });

  it('says that a panel schedule is none of the register', async () => {
    const report = await handOver(storeman, sample('panels-marram-hall.csv'));
    expect(report.missing).toEqual(['tag', 'kind', 'maker', 'serial']);
    expect(report.notices).toContainEqual(expect.objectContaining({ code: 'panel_schedule' }));
    const refused = await storeman
      .post(`/api/register/import/${report.uploadId}/accept`)
      .send({ mode: 'soundRows' });
    expect(refused.status).toBe(409);
  });
});
