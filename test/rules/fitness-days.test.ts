import { describe, expect, it } from 'vitest';
import { fitness } from '../../src/rules/fitness/fitness.js';
import type { Commitment } from '../../src/rules/gear/gear.js';
import {
  ACCESSORY_TRIGGERS,
  context,
  day,
  examined,
  gear,
  kind,
  line,
  requirement,
  scheme,
  without,
} from './example-gear.js';
import { codes, judge } from './example-verdict.js';

const promise = (from: string, to: string, changes: Partial<Commitment> = {}): Commitment => ({
  jobId: 7,
  jobReference: 'J-7',
  from: day(from),
  to: day(to),
  late: false,
  ...changes,
});

describe('dates', () => {
  it.each([
    // Examined on this day, due six months later; needed from 15 to 17 June, today the 10th.
    ['2025-12-09', ['out_of_date']],
    ['2025-12-10', ['due_during_job']],
    ['2025-12-16', ['due_during_job']],
    ['2025-12-17', []],
    ['2025-12-18', []],
  ])('examined on %s: %j', (doneOn, expected) => {
    expect(codes({ gear: { inspections: [examined(doneOn)] } })).toEqual(expected);
  });

  it('names the inspection, its due day and its source', () => {
    expect(judge({ gear: { inspections: [examined('2025-12-16')] } }).refusals).toEqual([
      { code: 'due_during_job', subject: 'thoroughExamination', on: '2026-06-16', source: 'loler-1998' },
    ]);
  });

  it('for a window already past, today decides', () => {
    const past = { window: { from: day('2026-06-01'), to: day('2026-06-03') } };
    expect(codes({ gear: { inspections: [examined('2025-12-09')] }, context: past })).toEqual([
      'out_of_date',
    ]);
    expect(codes({ gear: { inspections: [examined('2025-12-10')] }, context: past })).toEqual([]);
    expect(codes({ gear: { defectDeadline: day('2026-06-09') }, context: past })).toEqual([
      'defect_deadline',
    ]);
    expect(codes({ gear: { defectDeadline: day('2026-06-10') }, context: past })).toEqual([]);
  });

  it('never examined, failed, and after an event', () => {
    expect(codes({ gear: { inspections: [] } })).toEqual(['never_examined']);
    expect(codes({ gear: { inspections: [examined('2026-03-01', { outcome: 'unfit' })] } })).toEqual([
      'failed_examination',
    ]);
    const events = [{ type: 'overloaded', on: day('2026-03-01') }] as const;
    expect(codes({ gear: { events } })).toEqual(['examine_after_event']);
    expect(judge({ gear: { events } }).refusals[0]).toMatchObject({
      on: '2026-03-01',
      subject: 'thoroughExamination',
    });
    expect(codes({ gear: { events: [{ type: 'overloaded', on: day('2026-02-28') }] } })).toEqual([]);
  });

  it('gives every reason of every inspection', () => {
    const proof = requirement([{ when: 'interval', months: 12 }], { id: 'proof', type: 'proofLoadTest' });
    const gearState = {
      inspections: [examined('2025-01-01')],
      events: [{ type: 'dropped', on: day('2025-06-01') }],
    } as const;
    expect(
      codes({ gear: gearState, context: { scheme: scheme([requirement(ACCESSORY_TRIGGERS), proof]) } }),
    ).toEqual(['never_examined', 'out_of_date', 'examine_after_event']);
  });

  it('a missing certificate is refused only where the scheme asks for one', () => {
    expect(codes({ gear: { certificateOnFile: false } })).toEqual(['certificate_missing']);
    const lenient = scheme([requirement(ACCESSORY_TRIGGERS, { certificateRequired: false })]);
    expect(codes({ gear: { certificateOnFile: false }, context: { scheme: lenient } })).toEqual([]);
  });

  it('a kind without any rule in force is refused; a pre-use check is a rule', () => {
    expect(codes({ context: { scheme: scheme([]) } })).toEqual(['no_rule_for_kind']);
    expect(codes({ context: { scheme: scheme([requirement(null)]) } })).toEqual(['no_rule_for_kind']);
    const check = requirement([], { type: 'preUseCheck', certificateRequired: false });
    expect(codes({ context: { scheme: scheme([check]) } })).toEqual([]);
    expect(codes({ context: { scheme: scheme([requirement(null), check]) } })).toEqual([]);
  });
});

describe('service life', () => {
  // AS/NZS 1891.4:2009 practice: about 10 years from manufacture (read in a reproduction).
  const life = (from: 'manufacturedOn' | 'firstUsedOn') =>
    ({ serviceLife: { years: 10, from, source: { key: 'as-nzs-1891-4' } } }) as const;

  it.each([
    ['2016-06-09', ['past_service_life']],
    ['2016-06-10', ['service_life_ends_during_job']],
    ['2016-06-16', ['service_life_ends_during_job']],
    ['2016-06-17', []],
    ['2026-06-10', []],
    ['2026-06-11', ['service_life_unknown']],
  ])('made on %s: %j', (made, expected) => {
    expect(codes({ gear: { manufacturedOn: day(made) }, kind: life('manufacturedOn') })).toEqual(expected);
  });

  it('counts from first use where the kind says so, from manufacture where first use is not known', () => {
    const dates = { manufacturedOn: day('2010-01-01'), firstUsedOn: day('2016-06-17') };
    expect(codes({ gear: dates, kind: life('firstUsedOn') })).toEqual([]);
    const unused = { ...without(gear(), 'firstUsedOn'), manufacturedOn: day('2016-06-16') };
    expect(fitness(unused, line(), context({ kind: kind(life('firstUsedOn')) })).refusals).toEqual([
      { code: 'service_life_ends_during_job', on: '2026-06-16', source: 'as-nzs-1891-4' },
    ]);
  });

  it('a life from manufacture is unknown without the day, and no first use stands in for it', () => {
    const verdict = fitness(
      without(gear(), 'manufacturedOn'),
      line(),
      context({ kind: kind(life('manufacturedOn')) }),
    );
    expect(verdict.refusals).toEqual([{ code: 'service_life_unknown', source: 'as-nzs-1891-4' }]);
    expect(fitness(without(gear(), 'manufacturedOn'), line(), context()).fit).toBe(true);
  });

  it('counts part years down to whole months', () => {
    const serviceLife = { years: 0.55, from: 'manufacturedOn', source: { key: 'as-nzs-1891-4' } } as const;
    expect(codes({ gear: { manufacturedOn: day('2025-12-17') }, kind: { serviceLife } })).toEqual([]);
    expect(codes({ gear: { manufacturedOn: day('2025-12-16') }, kind: { serviceLife } })).toEqual([
      'service_life_ends_during_job',
    ]);
  });
});

describe('custody', () => {
  it.each([
    ['2026-06-10', '2026-06-14', []],
    ['2026-06-10', '2026-06-15', ['promised_elsewhere']],
    ['2026-06-16', '2026-06-16', ['promised_elsewhere']],
    ['2026-06-01', '2026-06-30', ['promised_elsewhere']],
    ['2026-06-17', '2026-06-20', ['promised_elsewhere']],
    ['2026-06-18', '2026-06-20', []],
  ])('promised from %s to %s, wanted from 15 to 17 June: %j', (from, to, expected) => {
    const commitments = [promise(from, to)];
    expect(codes({ gear: { commitments } })).toEqual(expected);
    expect(codes({ gear: { commitments }, context: { forJobId: 8 } })).toEqual(expected);
    expect(codes({ gear: { commitments }, context: { forJobId: 7 } })).toEqual([]);
  });

  it('names every job in the way', () => {
    const commitments = [
      promise('2026-06-15', '2026-06-15'),
      promise('2026-06-17', '2026-06-19', { jobId: 9, jobReference: 'J-9' }),
    ];
    expect(judge({ gear: { commitments } }).refusals).toEqual([
      { code: 'promised_elsewhere', on: '2026-06-15', jobReference: 'J-7', source: 'common-practice' },
      { code: 'promised_elsewhere', on: '2026-06-19', jobReference: 'J-9', source: 'common-practice' },
    ]);
  });

  it('late gear is not back, whatever the window', () => {
    const commitments = [promise('2026-05-01', '2026-05-03', { late: true })];
    const window = { from: day('2026-08-01'), to: day('2026-08-02') };
    expect(codes({ gear: { commitments }, context: { window } })).toEqual(['not_back_yet']);
    expect(codes({ gear: { commitments }, context: { forJobId: 7 } })).toEqual([]);
    const overlapping = [promise('2026-06-09', '2026-06-15', { late: true })];
    expect(codes({ gear: { commitments: overlapping } })).toEqual(['promised_elsewhere', 'not_back_yet']);
  });

  it('gear of another store only where the store is named', () => {
    expect(codes({ context: { homeStoreOnly: 2 } })).toEqual(['at_another_store']);
    expect(judge({ context: { homeStoreOnly: 2 } }).refusals[0]?.has).toBe('North');
    expect(codes({ context: { homeStoreOnly: 1 } })).toEqual([]);
  });
});
