import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import writeSheet from 'write-excel-file/node';
import { faultList, handOver, makeStore, stopClock } from '../support/import-client.js';
import { startServer, type TestServer } from '../support/test-server.js';

const HEADINGS = 'Tag,Kind,Make,Serial,WLL,Last exam,Notes';

describe('the rows of a file', () => {
  let server: TestServer;
  let storeman: TestAgent;

  beforeAll(async () => {
    server = await startServer('sqlite');
    stopClock(server);
    storeman = await server.signedIn('storeman');
    await makeStore(server, 'Lyon', 'eu');
  });
  afterAll(() => server.close());

  const faultsOf = async (...rows: string[]) =>
    faultList(await handOver(storeman, [HEADINGS, ...rows].join('\r\n')));

  it.each([
    ['a blank tag', ',sling,N,S1,2 t,,', ['2 Tag blank_cell']],
    ['a dash for a serial number', 'A,sling,N,-,2 t,,', ['2 Serial blank_cell']],
    ['a blank maker', 'A,sling,,S1,2 t,,', ['2 Make blank_cell']],
    ['a blank rating of gear that must be rated', 'A,sling,N,S1,,,', ['2 WLL blank_cell']],
    [
      'a serial number that a spreadsheet has rounded',
      'A,sling,N,5.14E+11,2 t,,',
      ['2 Serial damaged_number'],
    ],
    ['a formula in a name', 'A,sling,=B2,S1,2 t,,', ['2 Make formula']],
    ['a tension force', 'A,ratchet strap,N,S1,350 daN STF,,', ['2 WLL not_a_capacity']],
    ['a working load on a strap', 'A,ratchet strap,N,S1,WLL 2500 daN,,', ['2 WLL wrong_measure']],
    ['a force on a sling', 'A,sling,N,S1,20 kN,,', ['2 WLL wrong_unit']],
    ['nothing at all', 'A,sling,N,S1,0 kg,,', ['2 WLL zero']],
    ['a load nobody lifts', 'A,sling,N,S1,9000 t,,', ['2 WLL absurd']],
    ['a rating without a unit', 'A,sling,N,S1,800,,', ['2 WLL unit_missing']],
    ['a day of tomorrow', 'A,sling,N,S1,2 t,2026-11-26,', ['2 Last exam future_day']],
    [
      'every fault of a row',
      ',rocket,,,2 ton,31.11.2026,',
      [
        '2 Tag blank_cell',
        '2 Make blank_cell',
        '2 Serial blank_cell',
        '2 Kind unknown_kind',
        '2 Last exam not_a_day',
      ],
    ],
    ['a cell too many', 'A,sling,N,S1,2,500 kg,2026-01-01,', ['2 - field_count']],
    ['a cell too few', 'A,sling,N,S1,2 t,', ['2 - field_count']],
  ])('%s', async (_, row, faults) => {
    expect(await faultsOf(row)).toEqual(faults);
  });

  it.each([
    ['a day that is today', 'A,sling,N,S1,2 t,2026-11-25,'],
    ['blank cells past the headings in every row', 'A,sling,N,S1,2 t,,,\r\nB,sling,N,S2,2 t,,,'],
    ['a rating with its condition', 'A,sling,N,S1,"2 t (straight pull); 4 t (basket)",,'],
    ['a strap in kgf', 'A,ratchet strap,N,S1,LC 2500 kgf,,'],
    ['gear that carries no rating', 'A,tag line,N,S1,,,'],
    ['a word of another language for the kind', 'A,Zurrgurt,N,S1,25 kN,,'],
  ])('takes %s', async (_, row) => {
    expect(await faultsOf(row)).toEqual([]);
  });

  it('leaves out sums, headings repeated and lines below the list, and says so', async () => {
    const rows = [
      HEADINGS,
      'A,sling,N,S1,2 t,,',
      'Sous-total,1,,,,,',
      HEADINGS,
      'Total works,sling,N,S2,2 t,,',
      'Printed by the store,,,,,,',
    ];
    const report = await handOver(storeman, rows.join('\r\n'));
    expect(report.faults).toEqual([]);
    expect(report.counts).toEqual({ rows: 2, sound: 2, unchanged: 0, faulty: 0, skipped: 3 });
    const codes = report.notices
      .filter(({ row }) => row !== undefined)
      .map(({ row, code }) => `${row} ${code}`);
    expect(codes).toEqual(expect.arrayContaining(['3 total_row', '4 repeated_headings', '6 footer']));
  });

  it('takes a maker as most rows write it, and two spellings for one maker', async () => {
    const report = await handOver(
      storeman,
      [HEADINGS, 'A,sling,norfell,S1,2 t,,', 'B,sling,Norfell,S2,2 t,,', 'C,sling,Norfell,S3,2 t,,'].join(
        '\r\n',
      ),
    );
    expect(report.notices).toContainEqual(
      expect.objectContaining({
        row: 2,
        code: 'maker_spelling',
        sentence: expect.stringContaining('Norfell'),
      }),
    );
    expect(await faultsOf('A,sling,norfell,S1,2 t,,', 'B,sling,NORFELL,s1,2 t,,')).toEqual([
      '2 Serial duplicate_serial',
      '3 Serial duplicate_serial',
    ]);
    expect(await faultsOf('A,sling,Norfell,S1,2 t,,', 'B,sling,Brantwick,S1,2 t,,')).toEqual([]);
  });

  it('asks for the order of dates where nothing tells, and reads them by what the storeman says', async () => {
    const report = await handOver(
      storeman,
      `Asset,Kind,Make,Serial,WLL,Last exam\r\nA,sling,N,S1,2 t,03/04/2026\r\n`,
    );
    expect(faultList(report)).toEqual(['2 Last exam ambiguous_date']);
    const { columns, storeId } = report.mapping;
    const said = { columns, storeId, dateOrder: 'monthFirst' };
    const chosen = await storeman
      .post(`/api/register/import/${report.uploadId}/mapping`)
      .send(said)
      .expect(200);
    expect(chosen.body.faults).toEqual([]);
    await storeman
      .post(`/api/register/import/${report.uploadId}/accept`)
      .send({ mode: 'allOrNothing' })
      .expect(200);
    expect((await storeman.get('/api/register/export.csv')).text).toContain(',2026-03-04,Lyon,');
  });

  it('reads a sheet with real days and numbers, and refuses its formulas', async () => {
    const sheet = [
      ['Register of gear'],
      ['Tag', 'Kind', 'Make', 'Serial', 'SWL (kg)', 'Last exam'],
      ['X1', 'sling', 'Acme', 12345, 2000.5, new Date(Date.UTC(2026, 3, 5))],
      ['X2', 'sling', 'Acme', 12346, { type: 'Formula' as const, value: '1000*2' }, 46000],
      ['X3', 'sling', 'Acme', 1234567890123456789, 2000, null],
    ];
    const report = await handOver(storeman, await writeSheet(sheet, { dateFormat: 'dd/mm/yyyy' }).toBuffer());
    expect(faultList(report)).toEqual([
      '4 SWL (kg) formula',
      '4 Last exam not_a_day',
      '5 Serial damaged_number',
    ]);
    expect(report.counts).toMatchObject({ sound: 1, faulty: 2 });
  });
});
