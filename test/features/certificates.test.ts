import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { expectWholeLedger } from '../support/invariants.js';
import { jpeg } from '../support/sample-files.js';

describe.each(ENGINES)('the certificate of an examination on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const record = async (id: number, differences: object, who = server.examiner) => {
    const fields = { type: 'thoroughExamination', doneOn: '2026-01-15', outcome: 'fit', ...differences };
    await who.post(`/api/items/${id}/inspections`).send(fields).expect(201);
    const { body } = await server.crew.get(`/api/items/${id}/inspections`).expect(200);
    return Math.max(...body.map((each: { id: number }) => each.id));
  };
  const add = (id: number, kind: string, inspectionId: number | string) =>
    server.storeman
      .post(`/register/${id}/documents`)
      .field({ kind, inspectionId: String(inspectionId) })
      .attach('file', jpeg(`${kind} ${inspectionId}`), 'a.jpg');
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
});
