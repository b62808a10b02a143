import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Clock } from '../../src/clock.js';
import { checkState } from '../../src/checks/check-state.js';
import { coverageSentence } from '../../src/checks/coverage-words.js';
import type { CheckState } from '../../src/checks/coverage.dto.js';
import { toDay } from '../../src/rules/calendar/day.js';
import type { CheckPoint } from '../../src/rules/checks/checklist.js';
import { checkAnswers } from '../support/check-answers.js';
import { ENGINES } from '../support/engines.js';
import { jobInput, startGearYard, type GearYard } from '../support/gear-yard.js';

const fit = (inspectionId: number) => ({ inspectionId, outcome: 'fit' }) as const;
const unfit = (inspectionId: number) => ({ inspectionId, outcome: 'unfit' }) as const;

describe('how an item stands with its check of a day', () => {
  it.each([
    ['nobody checked it', [], {}, 'unchecked'],
    ['it passed', [fit(1)], {}, 'checked'],
    ['it failed', [unfit(1)], {}, 'failed'],
    ['it failed after it passed', [fit(1), unfit(2)], {}, 'failed'],
    ['it passed after it failed with nothing but a remark', [unfit(1), fit(2)], {}, 'checked'],
    [
      'it passed before the examination that ended the danger',
      [unfit(1), fit(2)],
      { releasedBy: 3 },
      'failed',
    ],
    ['it passed after that examination', [unfit(1), fit(4)], { releasedBy: 3 }, 'checked'],
    ['it passed and is in quarantine', [fit(1)], { condition: 'quarantined' }, 'failed'],
    ['nobody checked it and it is under repair', [], { condition: 'underRepair' }, 'failed'],
  ] as const)('when %s', (_, checks, facts, expected) => {
    expect(checkState(checks, facts)).toBe(expected);
  });
});

describe('the sentence of a line', () => {
  const items = (state: CheckState, count: number) =>
    Array.from({ length: count }, (_, index) => ({ tag: `${state}-${index + 1}`, state }));
  const [day, before] = [toDay('2026-12-01'), toDay('2026-11-30')];

  it('counts what passed and names the rest', () => {
    const twelve = [...items('checked', 9), ...items('failed', 1), ...items('unchecked', 2)];
    expect(coverageSentence(twelve, { plural: 'Straps', day, today: day })).toBe(
      '9 of 12 straps checked today; failed: failed-1; unchecked: unchecked-1, unchecked-2',
    );
    expect(coverageSentence(items('checked', 3), { plural: 'Slings', day: before, today: day })).toBe(
      '3 of 3 slings checked on 30 November 2026',
    );
  });
});

describe.each(ENGINES)('the coverage of a job on %s', (engine) => {
  let yard: GearYard;
  let jobId: number;
  let straps: { itemId: number; tag: string }[];

  /** A job with straps out today. */
  beforeAll(async () => {
    yard = await startGearYard(engine);
    for (let number = 1; number <= 12; number += 1)
      await yard.gear(`RS-${number}`, { kind: 'ratchetStrap', rating: ['2500', 'daN'] });
    const input = jobInput(yard.storeId, yard.day, { only: ['strapsRoundWidth'], from: 0, to: 5 });
    const twelve = { lineKey: 'strapsRoundWidth', quantity: 12, reason: 'twelve in this test' };
    const counts = { ...input.counts, panelsOnWheels: 1 };
    const job = { ...input, counts, adjustments: [...input.adjustments, twelve] };
    const made = await yard.storeman.post('/api/jobs').send(job).expect(201);
    jobId = made.body.id;
    await yard.storeman.post(`/api/jobs/${jobId}/reservation`).expect(201);
    straps = (await yard.storeman.get(`/api/jobs/${jobId}/booking`).expect(200)).body.items;
  });
  afterAll(() => yard.close());

  const check = async (itemId: number, bad: readonly string[] = [], differences: object = {}) =>
    (
      await yard.crew
        .post(`/api/items/${itemId}/checks`)
        .send({
          jobId,
          checkedAt: yard.app.get(Clock).now(),
          offsetMinutes: 0,
          answers: checkAnswers(yard, 'ratchetStrap', bad),
          ...differences,
        })
        .expect(201)
    ).body;
  const coverage = async (day?: string) =>
    (
      await yard.crew
        .get(`/api/jobs/${jobId}/checks`)
        .query(day === undefined ? {} : { day })
        .expect(200)
    ).body;

  it('lists what is reserved while nothing is out', async () => {
    const { lines, out } = await coverage();
    expect(straps).toHaveLength(12);
    expect(out).toBe(false);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({ checked: 0, of: straps.length });
    const { text } = await yard.crew.get(`/jobs/${jobId}`).expect(200);
    expect(text).not.toContain('Checks before use, today');
    expect(text).not.toContain('href="/phone');
  });

  it('is a press away on the phone, from the start page and from the sheet of a job that is out', async () => {
    for (const who of [yard.crew, yard.storeman])
      expect((await who.get('/').expect(200)).text).toContain('href="/phone"');
    const [first] = straps;
    await yard.storeman.post(`/api/jobs/${jobId}/hand-outs`).send({ tag: first?.tag }).expect(201);
    const { text } = await yard.crew.get(`/jobs/${jobId}`).expect(200);
    expect(text).toContain(`href="/phone#/jobs/${jobId}"`);
  });

  it('counts item by item, and names what failed and what nobody checked', async () => {
    for (const { tag } of straps.slice(1))
      await yard.storeman.post(`/api/jobs/${jobId}/hand-outs`).send({ tag }).expect(201);
    const all = straps.length;
    expect((await coverage()).lines[0].sentence).toBe(
      `0 of ${all} ratchet straps checked today; unchecked: ${straps.map(({ tag }) => tag).join(', ')}`,
    );
    const [first, second, ...rest] = straps;
    await check(first?.itemId ?? 0);
    await check(first?.itemId ?? 0);
    await check(second?.itemId ?? 0, ['stitching']);
    const unchecked = rest.length === 0 ? '' : `; unchecked: ${rest.map(({ tag }) => tag).join(', ')}`;
    const sentence = `1 of ${all} ratchet straps checked today; failed: ${second?.tag}${unchecked}`;
    const [line] = (await coverage()).lines;
    expect(line).toMatchObject({ sentence, checked: 1, of: all });
    expect(line.items[1]).toMatchObject({ state: 'failed', condition: 'quarantined', checkedBy: 'Person 2' });
    const { text } = await yard.crew.get(`/jobs/${jobId}`).expect(200);
    expect(text).toContain(sentence);
    expect((await yard.crew.get(`/jobs/${jobId}/checks`).expect(200)).text).toContain(sentence);
  });

  it('counts a check for its day only, and one in the store for no job too, but none for another job', async () => {
    const { itemId = 0 } = straps.at(-1) ?? {};
    const other = await yard.job({ from: 30, to: 31 });
    const before = (await coverage()).lines[0].checked;
    await check(itemId, [], { jobId: other });
    expect((await coverage()).lines[0].checked).toBe(before);
    const yesterday = new Date(Date.parse(yard.app.get(Clock).now()) - 24 * 3_600_000).toISOString();
    expect(await check(itemId, [], { checkedAt: yesterday })).toMatchObject({
      countsFor: yard.day(-1),
      clockDoubtful: false,
    });
    expect((await coverage()).lines[0].checked).toBe(before);
    await check(itemId, [], { jobId: undefined });
    expect((await coverage()).lines[0].checked).toBe(before + 1);
    expect(await coverage(yard.day(-1))).toMatchObject({ day: yard.day(-1), lines: [], out: false });
  });

  it('counts a check by a wrong clock for no day, and says to check again', async () => {
    const [{ itemId = 0, tag = '' } = {}, { itemId: second = 0, tag: secondTag = '' } = {}] =
      straps.slice(-3);
    const { checked } = (await coverage()).lines[0];
    const tomorrow = new Date(Date.parse(yard.app.get(Clock).now()) + 24 * 3_600_000).toISOString();
    expect(await check(itemId, [], { checkedAt: tomorrow })).toMatchObject({
      countsFor: null,
      clockDoubtful: true,
      advice: expect.stringContaining('check the gear again'),
      itemCondition: 'inService',
    });
    const [line] = (await coverage()).lines;
    expect(line.checked).toBe(checked);
    expect(line.sentence).toContain(`; checked by a clock in doubt, which does not count: ${tag}`);
    expect(line.items.at(-3)).toMatchObject({ state: 'unchecked', clockDoubtful: true });
    expect((await yard.crew.get(`/jobs/${jobId}/checks`).expect(200)).text).toContain('it does not count');
    const { body: bundle } = await yard.crew.get(`/api/phone/jobs/${jobId}`).expect(200);
    const onPhone = bundle.items.find(({ id }: { id: number }) => id === itemId);
    expect(onPhone.check.state).toBe('unchecked');
    await check(itemId);
    expect((await coverage()).lines[0].checked).toBe(checked + 1);

    const long = new Date(Date.parse(yard.app.get(Clock).now()) - 37 * 3_600_000).toISOString();
    const failed = await check(second, ['stitching'], { checkedAt: long });
    expect(failed).toMatchObject({ countsFor: null, outcome: 'unfit', itemCondition: 'quarantined' });
    expect(failed.defects).toMatchObject([{ point: 'stitching' }]);
    expect((await coverage()).lines[0].sentence).toMatch(new RegExp(`failed: .*${secondTag}`));
  });

  it('names what was checked for the job without being on it', async () => {
    const { id, tag } = await yard.gear('RS-STRAY', { kind: 'ratchetStrap', rating: ['2500', 'daN'] });
    expect(await check(id)).toMatchObject({ conflict: { code: 'not_on_job' } });
    expect((await coverage()).others).toMatchObject([{ tag, state: 'checked' }]);
    expect((await yard.crew.get(`/jobs/${jobId}/checks`).expect(200)).text).toContain(tag);
  });

  it('refuses a day that does not exist', async () => {
    await yard.crew.get(`/api/jobs/${jobId}/checks?day=2026-02-30`).expect(400);
    await yard.crew.get('/api/jobs/999999/checks').expect(404);
    expect((await yard.visitor().get(`/api/jobs/${jobId}/checks`).expect(401)).body.code).toBe(
      'sign_in_first',
    );
  });

  it('gives a phone the job with its items, their checklists and their checks of today', async () => {
    const { body: jobs } = await yard.crew.get('/api/phone/jobs').expect(200);
    expect(jobs).toMatchObject([{ id: jobId, out: straps.length, reserved: 0 }]);
    const { body: bundle } = await yard.crew.get(`/api/phone/jobs/${jobId}`).expect(200);
    expect(bundle.checklists).toMatchObject([{ kind: 'ratchetStrap', points: expect.any(Array) }]);
    const limits = bundle.checklists[0].points.flatMap((point: CheckPoint) =>
      point.criteria.map(({ source }) => source.key),
    );
    const named = bundle.checklists[0].sources.map(({ key }: { key: string }) => key);
    expect(named.sort()).toEqual([...new Set(limits)].sort());
    expect(bundle.items).toHaveLength(straps.length);
    expect(bundle.items[0]).toMatchObject({ tag: straps[0]?.tag, held: 'out', check: { state: 'checked' } });
    expect(bundle.items[1]).toMatchObject({ standing: 'quarantined', check: { state: 'failed' } });
  });
});
