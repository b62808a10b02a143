import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { ENGINES } from '../support/engines.js';
import { examination } from '../support/example-examination.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { expectWholeLedger } from '../support/invariants.js';
import { promise } from '../support/promise.js';
import { jpeg } from '../support/sample-files.js';

describe.each(ENGINES)('the certificate of an examination on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const lastRecord = async (id: number): Promise<number> => {
    const { body } = await server.crew.get(`/api/items/${id}/inspections`).expect(200);
    return Math.max(...body.map((each: { id: number }) => each.id));
  };
  const record = async (id: number, differences: object, who = server.examiner) => {
    const fields = { type: 'thoroughExamination', doneOn: '2026-01-15', outcome: 'fit', ...differences };
    await who.post(`/api/items/${id}/inspections`).send(fields).expect(201);
    return lastRecord(id);
  };
  const add = (id: number, kind: string, inspectionId: number | string) =>
    server.storeman
      .post(`/register/${id}/documents`)
      .field({ kind, inspectionId: String(inspectionId) })
      .attach('file', jpeg(`${kind} ${inspectionId}`), 'a.jpg');
  const today = new Clock().today('Europe/London');
  const day = (days: number) => addDays(today, days);
  const onFile = async (id: number) =>
    (await server.crew.get(`/api/items/${id}`).expect(200)).body.certificateOnFile;

  it('is offered on the form, corrected ones and checks left out', async () => {
    const { id } = await server.newItem();
    const path = `/register/${id}/documents`;
    expect((await server.storeman.get(path).expect(200)).text).not.toContain('name="inspectionId"');
    const wrong = await record(id, { doneOn: '2026-01-14' });
    const right = await record(id, { supersedesId: wrong, reportNumber: 'T-7 <b>' });
    for (const page of [path, `/register/${id}`]) {
      const { text } = await server.storeman.get(page).expect(200);
      expect(text).toContain('no particular examination');
      expect(text).toMatch(
        new RegExp(`value="${right}"[^>]*>thorough examination, 15 January 2026, report T-7 &lt;b`),
      );
      expect(text).not.toContain(`value="${wrong}"`);
      expect(text).toContain('puts its report on file');
    }
  });

  it.each(['thoroughExamination', 'proofLoadTest'])('puts the report of a %s on file', async (type) => {
    const { id } = await server.newItem();
    const passed = await record(id, { type });
    await add(id, 'photo', passed).expect(303);
    await add(id, 'certificate', '').expect(303);
    expect(await onFile(id)).toBe(false);
    await add(id, 'certificate', passed).expect(303);
    expect(await onFile(id)).toBe(true);
    const { body: lines } = await server.crew.get(`/api/items/${id}/history`).expect(200);
    const filed = lines.filter(({ action }: { action: string }) => action === 'item.certificateFiled');
    expect(filed).toMatchObject([{ detail: { inspectionId: passed } }]);
    expect((await server.crew.get(`/register/${id}`).expect(200)).text).toContain(
      'certificate on file from now on',
    );
    await expectWholeLedger(server.app);
  });

  it.each([
    ['thoroughExamination', 'fit', true],
    ['proofLoadTest', 'fit', true],
    ['thoroughExamination', 'unfit', false],
    ['proofLoadTest', 'unfit', false],
    ['interimInspection', 'fit', false],
  ])('of a %s with the outcome %s is on file by its number: %s', async (type, outcome, expected) => {
    const { id } = await server.newItem();
    const who = type === 'interimInspection' ? server.storeman : server.examiner;
    await record(id, { type, outcome, doneBy: 'A. Body', reportNumber: 'T-8' }, who);
    expect(await onFile(id)).toBe(expected);
  });

  it('puts nothing on file of what failed, was corrected, is of another sort or of another item', async () => {
    const { id } = await server.newItem();
    const interim = await record(id, { type: 'interimInspection', doneBy: 'A. Body' });
    const corrected = await record(id, {});
    const failed = await record(id, { outcome: 'unfit', supersedesId: corrected });
    for (const inspectionId of [interim, corrected, failed])
      await add(id, 'certificate', inspectionId).expect(303);
    const other = await record((await server.newItem()).id, {});
    await add(id, 'certificate', other).expect(400);
    expect(await onFile(id)).toBe(false);
  });

  // LOLER 1998 (SI 1998/2307) reg 11(2)(a)(iv): the report of a periodic examination is kept until the next one's.
  describe('is that of the last thorough examination', () => {
    const refusals = async (id: number): Promise<string[]> =>
      (await server.crew.get(`/api/items/${id}/fitness`).expect(200)).body.refusals.map(
        ({ code }: { code: string }) => code,
      );

    it('so a newer one without a number takes it off file, until its number or its certificate is there', async () => {
      const [numbered, filed] = [await server.newItem(), await server.newItem()];
      for (const { id } of [numbered, filed]) {
        await record(id, { doneOn: day(-40), reportNumber: 'T-1' });
        expect(await refusals(id)).toEqual([]);
        await record(id, { doneOn: day(-1) });
        expect(await onFile(id)).toBe(false);
        expect(await refusals(id)).toEqual(['certificate_missing']);
      }
      await record(numbered.id, {
        doneOn: day(-1),
        reportNumber: 'T-2',
        supersedesId: await lastRecord(numbered.id),
      });
      await add(filed.id, 'certificate', await lastRecord(filed.id)).expect(303);
      for (const { id } of [numbered, filed]) {
        expect(await onFile(id)).toBe(true);
        expect(await refusals(id)).toEqual([]);
      }
      await expectWholeLedger(server.app);
    });

    it('so an older one entered late changes nothing, with a number, a certificate or a report of ours', async () => {
      const item = await server.newItem();
      const { id } = item;
      await record(id, { doneOn: day(-10), reportNumber: 'T-1' });
      await record(id, { doneOn: day(-20) });
      expect(await onFile(id)).toBe(true);
      await record(id, { doneOn: day(-5) });
      const older = await record(id, { doneOn: day(-30), reportNumber: 'T-0' });
      await add(id, 'certificate', older).expect(303);
      const report = examination(item.tag, day(-6), {
        lastExaminedOn: day(-10),
        noEarlierExamination: false,
      });
      await server.examiner.post(`/api/items/${id}/examinations`).send(report).expect(201);
      await record(id, { type: 'proofLoadTest', doneOn: day(-1), reportNumber: 'P-1' });
      expect(await onFile(id)).toBe(false);
    });

    it('and not that of a proof load test or an interim inspection, which takes none off file', async () => {
      const { id } = await server.newItem({ certificateOnFile: true });
      await record(id, { type: 'proofLoadTest', doneOn: day(-2) });
      await record(id, { type: 'interimInspection', doneOn: day(-2) });
      await record(id, { outcome: 'unfit', doneOn: day(-3) });
      expect(await onFile(id)).toBe(true);
      await record(id, { doneOn: day(-1) });
      expect(await onFile(id)).toBe(false);
    });

    it('of two on one day that of the one recorded last', async () => {
      const { id } = await server.newItem();
      await record(id, { doneOn: day(-3), reportNumber: 'T-1' });
      await record(id, { doneOn: day(-3) });
      expect(await onFile(id)).toBe(false);
      await record(id, { doneOn: day(-3), reportNumber: 'T-2' });
      expect(await onFile(id)).toBe(true);
    });

    it('and another one when a correction makes another the last', async () => {
      const [bare, numbered, filed] = [
        await server.newItem(),
        await server.newItem(),
        await server.newItem(),
      ];
      const reports = new Map([
        [bare.id, {}],
        [numbered.id, { reportNumber: 'T-1' }],
        [filed.id, {}],
      ]);
      for (const [id, report] of reports) {
        const older = await record(id, { doneOn: day(-20), ...report });
        if (id === filed.id) await add(id, 'certificate', older).expect(303);
        const newer = await record(id, { doneOn: day(-10), reportNumber: 'T-2' });
        await record(id, { doneOn: day(-30), reportNumber: 'T-2', supersedesId: newer });
      }
      expect([await onFile(bare.id), await onFile(numbered.id), await onFile(filed.id)]).toEqual([
        false,
        true,
        true,
      ]);
      const failed = await record(numbered.id, { doneOn: day(-5), outcome: 'unfit' });
      expect(await onFile(numbered.id)).toBe(true);
      await record(numbered.id, { doneOn: day(-5), supersedesId: failed });
      expect(await onFile(numbered.id)).toBe(false);
    });

    it('so the jobs of an item that lost it are flagged, where the place asks for it', async () => {
      const dock = { name: 'Dock', address: '3 Pier', scheme: 'us', timeZone: 'Europe/London' };
      const { body: store } = await server.manager.post('/api/stores').send(dock).expect(201);
      for (const [storeId, isAsked] of [
        [server.storeId, true],
        [Number(store.id), false],
      ] as const) {
        const { id } = await server.newItem({ storeId });
        const reference = `LOST-${engine}-${isAsked}`;
        await record(id, { doneOn: day(-40), reportNumber: 'T-1' });
        await promise(server, { itemId: id, storeId, reference, from: day(1), to: day(3) });
        const bare = { type: 'thoroughExamination', doneOn: day(-1), outcome: 'fit', nextDueOn: day(90) };
        const { body } = await server.examiner.post(`/api/items/${id}/inspections`).send(bare).expect(201);
        expect(body.item.certificateOnFile).toBe(false);
        const { body: history } = await server.crew.get(`/api/items/${id}/history`).expect(200);
        expect(history[0]).toMatchObject({ action: 'item.reportMissing' });
        expect(body.affectedJobs).toEqual(isAsked ? [expect.objectContaining({ reference })] : []);
      }
    });

    it('and the form and the page of the item say so, and what to do', async () => {
      const { id } = await server.newItem({ certificateOnFile: true });
      const form = await server.examiner.get(`/register/${id}/inspection`).expect(200);
      expect(form.text).toContain('Without it the report of a thorough examination is not on file');
      const bare = await record(id, { doneOn: day(-1), remarks: 'pads renewed' });
      const correction = `/register/${id}/inspection?supersedesId=${bare}&amp;type=thoroughExamination`;
      const page = await server.examiner.get(`/register/${id}`).expect(200);
      expect(page.text).toContain(`No report is on file of record ${bare}`);
      expect(page.text).toContain(correction);
      expect((await server.crew.get(`/register/${id}`).expect(200)).text).toContain('competent person');
      const again = await server.examiner.get(correction.replace('&amp;', '&')).expect(200);
      for (const kept of [`value="${day(-1)}"`, '>pads renewed</textarea>', 'value="fit" selected'])
        expect(again.text).toContain(kept);
    });
  });
});
