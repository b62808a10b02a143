import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { addDays } from '../../src/rules/calendar/day.js';
import { ENGINES } from '../support/engines.js';
import { examination } from '../support/example-examination.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { itemCalls } from '../support/item-calls.js';

const today = new Clock().today('Europe/London');
const yesterday = addDays(today, -1);

// LOLER 1998 (SI 1998/2307) Schedule 1 paragraph 4: the date of the last thorough examination.
describe.each(ENGINES)('the last examination in a report on %s', (engine) => {
  let server: GearServer;
  beforeAll(async () => void (server = await startGearServer(engine)));
  afterAll(() => server.close());

  const { act } = itemCalls(() => server, {});
  const sign = (who: TestAgent, { id, tag }: { id: number; tag: string }, changes: object = {}) =>
    who.post(`/api/items/${id}/examinations`).send(examination(tag, today, changes));
  const errorsOf = async (item: { id: number; tag: string }, changes: object): Promise<string[]> => {
    const { body } = await sign(server.examiner, item, changes).expect(400);
    return body.errors.map(
      ({ field, message }: { field: string; message: string }) => `${field}: ${message}`,
    );
  };

  it('is the one that the register has, or the report says why not', async () => {
    const item = await server.newItem();
    const bare = { type: 'thoroughExamination', doneOn: yesterday, outcome: 'fit' };
    await act(server.examiner, item.id, 'inspections', bare).expect(201);
    const [{ id: record }] = (await server.crew.get(`/api/items/${item.id}/inspections`)).body;
    const form = await server.examiner.get(`/register/${item.id}/examination`).expect(200);
    expect(form.text).toMatch(new RegExp(`name="lastExaminedOn"[^>]*value="${yesterday}"`));
    for (const said of [{}, { noEarlierExamination: false, lastExaminedOn: addDays(yesterday, -1) }]) {
      const [error, ...others] = await errorsOf(item, said);
      expect(error).toMatch(/^lastExaminedOn: paragraph 4: the register has one on /);
      expect(error).toContain(`(record ${record})`);
      expect(others).toEqual([]);
    }
    const why = 'the plate was changed:\nthat record is of another lifter';
    const { body } = await sign(server.examiner, item, { registerDoubt: why }).expect(201);
    const { id, particulars } = body.examination;
    expect(particulars.registerDoubt).toEqual({ on: yesterday, record, why });
    const page = await server.crew.get(`/examinations/${id}`).expect(200);
    expect(page.text).toContain('None is known.');
    expect(page.text).toContain(`>${why}</span>`);
    // Before the day examined nothing is on record but what this very report corrects.
    const instead = { supersedesId: body.examination.inspectionId, registerDoubt: why };
    await sign(server.examiner, item, instead).expect(201);
  });

  it('is not the record that the report corrects, nor one that came later', async () => {
    const item = await server.newItem();
    const first = await sign(server.examiner, item, { examinedOn: yesterday }).expect(201);
    const { inspectionId: supersedesId } = first.body.examination;
    const second = await sign(server.examiner, item, { supersedesId }).expect(201);
    const third = await sign(server.examiner, item, { examinedOn: addDays(today, -3) }).expect(201);
    for (const { body } of [second, third])
      expect(body.examination.particulars).toMatchObject({ lastExaminedOn: null });
  });
});
