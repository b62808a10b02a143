import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import { ENGINES } from '../support/engines.js';
import { jobInput, PARAMETERS, startGearYard, type GearYard } from '../support/gear-yard.js';

const without = (key: string) => PARAMETERS.filter((stated) => stated.key !== key);

describe.each(ENGINES)('the calculation of a job on %s', (engine) => {
  let yard: GearYard;
  beforeAll(async () => {
    yard = await startGearYard(engine);
    await yard.gear('PL-81');
    await yard.gear('PL-82');
  });
  afterAll(() => yard.close());

  const made = async (changes: object = {}) => {
    const input = { ...jobInput(yard.storeId, yard.day), ...changes };
    return (await yard.storeman.post('/api/jobs').send(input).expect(201)).body;
  };
  const sheetOf = async (id: number) =>
    (await yard.crew.get(`/api/jobs/${id}/calculation`).expect(200)).body.sheet;
  const sectionOf = async (id: number, name: string) =>
    (await sheetOf(id)).sections.find(({ calculation }: { calculation: string }) => calculation === name);
  const pageOf = async (path: string) => (await yard.crew.get(path).expect(200)).text;

  it('gives every part in order, with its figures, steps and sources', async () => {
    const job = await made();
    const sheet = await sheetOf(job.id);
    expect(sheet.sections.map(({ calculation }: { calculation: string }) => calculation)).toEqual([
      'lifting',
      'unloading',
      'strapping',
      'supports',
      'hosting',
      'steadying',
      'platform',
      'programme',
    ]);
    const hosting = await sectionOf(job.id, 'hosting');
    expect(hosting.figures).toContainEqual({
      key: 'lifterMassKg',
      label: 'mass of the lifter',
      unit: 'kg',
      value: '180',
      source: 'common-practice',
      caution: 'From the plate of the heaviest lifter that is used.',
      stated: { reason: 'plate', methodValue: null },
    });
    // 478 kg with no allowance for handling, the lifter of 180 kg and 30 kg of rigging.
    expect(hosting.workings[0].result).toEqual({
      name: 'load on the host machine',
      value: '688',
      unit: 'kg',
    });
    // 7.45 m × (2 − √2) = 4.364 m, in whole centimetres.
    expect(sheet.spacings).toEqual([{ panel: 'A1', spacingM: '4.36', overhangM: '1.545' }]);
    const page = await pageOf(`/jobs/${job.id}/calculation`);
    expect(page).toContain('From truck to trolley: the spreader bar');
    expect(page).toContain('plate (this job)');
    expect(page).toContain('Nobody stands under a load');
    expect(page).not.toContain('Not settled yet');
  });

  it('says what is missing, refuses the gear that depends on it, and nothing else', async () => {
    const job = await made({ parameters: without('lifterMassKg'), adjustments: [] });
    const hosting = await sectionOf(job.id, 'hosting');
    expect(hosting.problems).toEqual([{ code: 'parameter_missing', subject: 'lifterMassKg' }]);
    expect(await pageOf(`/jobs/${job.id}/calculation`)).toContain(
      'The mass of the lifter is not stated. State it on the job',
    );
    const { lines } = (await yard.storeman.get(`/api/jobs/${job.id}/proposal`).expect(200)).body;
    const unsettled = lines.filter(({ line }: { line: { unsettled?: unknown } }) => line.unsettled);
    expect(unsettled.map(({ line }: { line: { key: string } }) => line.key)).toEqual(['hostMachine']);
    expect(unsettled[0]).not.toHaveProperty('remedies');
    expect(await pageOf(`/jobs/${job.id}/plan`)).toContain('No gear is proposed until the need is settled');
  });

  it('takes a geometry that cannot be as a reason to refuse, in words', async () => {
    const legs = { key: 'topLegLengthM', value: '1.4', reason: 'found in the store' };
    const job = await made({ parameters: [...PARAMETERS, legs], adjustments: [] });
    expect((await sectionOf(job.id, 'unloading')).problems).toMatchObject([{ code: 'leg_too_short' }]);
    expect(await pageOf(`/jobs/${job.id}/calculation`)).toContain('A top leg is too short to reach the hook');
  });

  it.each([
    [{ key: 'handlingFactor', value: '0.9', reason: 'x' }, 'should be from 1 to 2'],
    [{ key: 'unheardOf', value: '1', reason: 'x' }, 'the method has no such figure'],
    [{ key: 'castorsPerTrolley', value: '3.5', reason: 'x' }, 'write a whole number'],
    [{ key: 'handlingFactor', value: '1.2', reason: ' ' }, 'where the figure is from'],
    [{ key: 'handlingFactor', value: '-1', reason: 'x' }, 'the figure'],
  ])('refuses the stated figure %o', async (stated, words) => {
    const input = { ...jobInput(yard.storeId, yard.day), parameters: [stated] };
    const { body } = await yard.storeman.post('/api/jobs').send(input).expect(400);
    expect(JSON.stringify(body.errors)).toContain(words);
    expect(body.errors[0].field).toMatch(/^parameters\[0\]/);
  });

  it('says plainly when the days are too few, and when a truck comes too early', async () => {
    const panels = [{ ...jobInput(yard.storeId, yard.day).panels[0], count: 400 }];
    const job = await made({ panels, backDay: yard.day(12) });
    expect(await pageOf(`/jobs/${job.id}`)).toContain('The days are too few');
    expect(await pageOf(`/jobs/${job.id}/calculation`)).toContain('too few days');
  });

  it('refuses a truck time that nobody can read', async () => {
    const input = { ...jobInput(yard.storeId, yard.day), truckTimes: ['tomorrow at eight'] };
    const { body } = await yard.storeman.post('/api/jobs').send(input).expect(400);
    expect(JSON.stringify(body.errors)).toContain('2026-12-01T08:30');
    const night = await made({ truckTimes: ['2026-12-01T23:30'] });
    expect((await sectionOf(night.id, 'programme')).problems).toMatchObject([
      { code: 'truck_outside_working_hours', subject: '2026-12-01T23:30' },
    ]);
  });

  it('is kept unchanged with what was reserved on it, once for each change of the arithmetic', async () => {
    const job = await made({ loadOutDay: yard.day(40), backDay: yard.day(41) });
    const kept = async () => (await yard.crew.get(`/api/jobs/${job.id}/calculation`).expect(200)).body.kept;
    expect(await kept()).toEqual([]);
    await yard.storeman.post(`/api/jobs/${job.id}/reservation`).expect(201);
    const [first] = await kept();
    const heavier = [{ ...job.panels[0], massKg: '480' }];
    await yard.storeman
      .patch(`/api/jobs/${job.id}`)
      .set('If-Match', `"v${job.version}"`)
      .send({ panels: heavier, counts: { ...job.counts, liftersInUse: 2 } })
      .expect(200);
    await yard.storeman.post(`/api/jobs/${job.id}/reservation`).expect(201);
    expect(await kept()).toHaveLength(2);
    const { body } = await yard.crew.get(`/api/jobs/${job.id}/calculation/${first.id}`).expect(200);
    expect(body.fingerprint).toBe(first.fingerprint);
    expect(body.sheet.panels[0].result.value).toBe('478');
    expect((await sheetOf(job.id)).panels[0].result.value).toBe('480');
    expect(await pageOf(`/jobs/${job.id}/calculation/${first.id}`)).toContain('It never changes');
    await yard.crew.get(`/api/jobs/${job.id}/calculation/999999`).expect(404);
    const change = yard.app
      .get(UnitOfWork)
      .run((manager) => manager.query('UPDATE calculation_sheet SET fingerprint = $1', ['x']));
    await expect(change).rejects.toThrow(/append_only/);
  });

  it('puts what only eyes can confirm on the hand-out sheet', async () => {
    const job = await made({ loadOutDay: yard.day(50), backDay: yard.day(51) });
    const { text } = await yard.storeman.get(`/jobs/${job.id}/hand-out`).expect(200);
    expect(text).toContain('The tines and the back guard are off the host machine.');
  });
});
