import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkAnswers } from '../support/check-answers.js';
import { ENGINES } from '../support/engines.js';
import { startGearYard, type GearYard } from '../support/gear-yard.js';
import { promise } from '../support/promise.js';

describe.each(ENGINES)('the pages of checks on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => void (yard = await startGearYard(engine)));
  afterAll(() => yard.close());

  const strap = (tag: string) => yard.gear(tag, { kind: 'ratchetStrap', rating: ['2500', 'daN'] });
  /** The form as a browser sends it; points left out have no radio chosen. */
  const fields = (bad: readonly string[], differences: Readonly<Record<string, string>> = {}) => {
    const form: Record<string, string> = { _once: randomUUID(), ...differences };
    for (const [index, { point, answer }] of checkAnswers(yard, 'ratchetStrap', bad).entries()) {
      form[`answers[${index}].point`] = point;
      form[`answers[${index}].answer`] = answer;
      form[`answers[${index}].remarks`] = '';
    }
    return form;
  };
  const send = (id: number, form: Record<string, string>) =>
    yard.crew.post(`/register/${id}/check`).type('form').send(form);

  it('asks each point by itself, with nothing chosen and no way to pass all at once', async () => {
    const { id } = await strap('RS-A');
    const { text } = await yard.crew.get(`/register/${id}/check`).expect(200);
    const points = checkAnswers(yard, 'ratchetStrap').length;
    expect(text.match(/type="radio"/g)).toHaveLength(points * 2);
    expect(text).not.toMatch(/type="radio"[^>]*checked/);
    expect(text.match(/<button type="submit"/g)).toHaveLength(2); // signing out, and this one
  });

  it('leads from one item of the job to the next and back to the coverage, and takes effect once', async () => {
    const [one, two] = [await strap('RS-B'), await strap('RS-C')];
    const row = { storeId: yard.storeId, from: yard.day(0), to: yard.day(2), state: 'out' as const };
    const jobId = await promise(yard, { ...row, itemId: one.id, reference: `P-${engine}` });
    const second = await promise(yard, { ...row, itemId: two.id, reference: `Q-${engine}` });
    const form = fields([], { jobId: String(jobId) });
    const first = await send(one.id, form).expect(303);
    expect(first.headers['location']).toBe(`/jobs/${jobId}/checks`);
    expect((await send(one.id, form).expect(303)).headers['location']).toBe(`/jobs/${jobId}/checks`);
    const { body: inspections } = await yard.crew.get(`/api/items/${one.id}/inspections`).expect(200);
    expect(inspections.filter(({ type }: { type: string }) => type === 'preUseCheck')).toHaveLength(1);
    const page = await yard.crew.get(`/jobs/${second}/checks`).expect(200);
    expect(page.text).toContain(`/register/${two.id}/check?job=${second}`);
    const failed = await send(two.id, fields(['stitching'])).expect(303);
    expect(failed.headers['location']).toBe(`/register/${two.id}`);
    const next = await yard.crew.get(`/register/${one.id}/check?job=${jobId}&done=${two.id}`).expect(200);
    expect(next.text).toContain('RS-C is quarantined: put it aside, nobody may use it.');
  });

  it('shows the form again with what was entered and what is wrong', async () => {
    const { id } = await strap('RS-D');
    const { 'answers[0].answer': _left, ...rest } = fields(['hooks']);
    const missing = await send(id, { ...rest, 'answers[1].remarks': 'frayed <b>' }).expect(400);
    expect(missing.text).toContain('choose good or bad');
    expect(missing.text).toContain('frayed &lt;b>');
    const figure = {
      'figures[0].at': '1',
      'figures[0].name': 'cut',
      'figures[0].value': 'six',
      'figures[0].unit': 'mm',
    };
    const unread = await send(id, { ...fields([]), ...figure }).expect(400);
    expect(unread.text).toContain('cannot be read. Write a bare number such as');
    expect(unread.text).toContain('value="six"');
    await send(id, { _once: randomUUID(), answers: 'x', figures: 'y' }).expect(400);
    expect((await yard.crew.get(`/api/items/${id}`).expect(200)).body.condition).toBe('inService');
  });

  it('reads a figure with its unit from the form', async () => {
    const { id } = await strap('RS-E');
    const figures = {
      'figures[0].at': '1',
      'figures[0].name': 'cut',
      'figures[0].value': '0.2',
      'figures[0].unit': 'in',
      'figures[2].at': '1',
      'figures[2].name': 'width',
      'figures[2].value': '50',
      'figures[2].unit': 'mm',
    };
    await send(id, { ...fields([]), ...figures }).expect(303);
    expect((await yard.crew.get(`/api/items/${id}`).expect(200)).body.condition).toBe('quarantined');
  });

  it('never guesses between tags that read alike', async () => {
    const ask = async (tag: string) =>
      (await yard.crew.get('/api/phone/tags').query({ tag }).expect(200)).body;
    const tags = ({ candidates }: { candidates: { tag: string }[] }) => candidates.map(({ tag }) => tag);
    const { id } = await strap('XO-1');
    expect(await ask('xo 1')).toMatchObject({ match: { id, tag: 'XO-1', exact: true } });
    const misread = await ask('X0-I');
    expect(misread.match).toBeNull();
    expect(misread.candidates).toMatchObject([{ id, exact: false, serial: expect.any(String) }]);
    await strap('X0-1');
    const both = await ask('X0-1');
    expect(both.match).toBeNull();
    expect(tags(both)).toEqual(['X0-1', 'XO-1']);
    expect(both.candidates.map(({ exact }: { exact: boolean }) => exact)).toEqual([true, false]);
    expect(await ask('no such tag')).toEqual({ match: null, candidates: [] });
    expect(await ask('--')).toEqual({ match: null, candidates: [] });
    await yard.crew.get('/api/phone/tags').expect(400);
  });
});
