import { describe, expect, it } from 'vitest';
import { fitness } from '../../src/rules/fitness/fitness.js';
import { inOrder, REFUSAL_CODES, type RefusalCode } from '../../src/rules/fitness/refusal.js';
import type { Commitment, Gear } from '../../src/rules/gear/gear.js';
import { context, day, examined, gear, kind, line, scheme, TODAY, without } from './example-gear.js';
import { codes, judge } from './example-verdict.js';

const promise = (from: string, to: string, changes: Partial<Commitment> = {}): Commitment => ({
  jobId: 7,
  jobReference: 'J-7',
  from: day(from),
  to: day(to),
  late: false,
  ...changes,
});

describe('fit', () => {
  it('is no refusal at all, with the working and the dates', () => {
    const verdict = judge();
    expect(verdict).toMatchObject({ fit: true, refusals: [], cautions: [], dueOn: '2026-09-01' });
    expect(verdict.workings.map(({ title }) => title)).toEqual(['Marking in SI', 'Due by interval']);
  });

  it('has cautions that are no refusal', () => {
    const inspections = [examined('2026-03-01'), examined('2026-06-11')];
    expect(judge({ gear: { inspections } })).toMatchObject({
      fit: true,
      cautions: ['inspection_in_future_ignored'],
    });
  });

  it('refuses to answer for a window that ends before it begins, not for one of a day', () => {
    const until = (to: string) => ({ context: { window: { from: day('2026-06-17'), to: day(to) } } });
    expect(() => judge(until('2026-06-16'))).toThrow(RangeError);
    expect(() => judge(until('2026-06-16'))).toThrow('2026-06-16');
    expect(judge(until('2026-06-17')).fit).toBe(true);
  });

  it('leaves out the due day and the ratio where there is none', () => {
    const unrated = fitness(gear(), without(line(), 'rating'), context({ scheme: scheme([]) }));
    expect(unrated).toStrictEqual({
      fit: false,
      refusals: [{ code: 'no_rule_for_kind', subject: 'sling', source: 'common-practice' }],
      cautions: [],
      workings: [],
    });
  });
});

describe('condition and identity', () => {
  it.each([
    [{ condition: 'scrapped' }, 'scrapped'],
    [{ condition: 'quarantined' }, 'quarantined'],
    [{ condition: 'underRepair' }, 'under_repair'],
    [{ missing: true }, 'missing'],
    [{ labelLegible: false }, 'label_illegible'],
    [{ serialKnown: false }, 'serial_unknown'],
  ] as const)('%j is %s', (change, code) => {
    expect(codes({ gear: change })).toEqual([code]);
    expect(judge({ gear: change }).fit).toBe(false);
  });

  it.each([
    ['2026-06-16', ['defect_deadline']],
    ['2026-06-17', []],
    ['2026-06-18', []],
  ])('a defect good through %s, back on 2026-06-17: %j', (deadline, expected) => {
    expect(codes({ gear: { defectDeadline: day(deadline) } })).toEqual(expected);
  });

  it('names the day of the defect', () => {
    const [refusal] = judge({ gear: { defectDeadline: day('2026-06-16') } }).refusals;
    expect(refusal?.on).toBe('2026-06-16');
  });
});

describe('kind and duty', () => {
  it('the kind must be the one asked for, and the definition the item’s own', () => {
    expect(codes({ line: { kind: 'shackle' } })).toEqual(['wrong_kind']);
    expect(codes({ kind: { kind: 'shackle' } })).toEqual(['wrong_kind']);
  });

  it('the kind must be for the duty', () => {
    expect(codes({ line: { duty: 'steadying' } })).toEqual(['wrong_duty']);
    expect(codes({ kind: { duties: ['lashing'] } })).toEqual(['wrong_duty']);
  });

  it('a lashing capacity never serves lifting, whatever the kind says', () => {
    const markings = [{ measure: 'lashingCapacity', value: '5000', unit: 'daN' }] as const;
    const rating = {
      measure: 'lashingCapacity',
      source: { key: 'en-12195-2' },
      units: ['daN'],
      required: true,
    } as const;
    expect(codes({ gear: { markings } })).toEqual(['wrong_duty', 'rating_not_comparable']);
    const need = { measure: 'lashingCapacity', value: '100', unit: 'N' } as const;
    expect(codes({ gear: { markings }, line: { rating: need }, kind: { rating } })).toEqual(['wrong_duty']);
    const both = [...markings, { measure: 'workingLoadLimit', value: '2', unit: 't' }] as const;
    expect(codes({ gear: { markings: both } })).toEqual([]);
    expect(codes({ gear: { markings: both }, line: { rating: need } })).toEqual(['wrong_duty']);
    const lashing = { rating: need, duty: 'lashing' } as const;
    expect(codes({ gear: { markings }, line: lashing, kind: { rating, duties: ['lashing'] } })).toEqual([]);
  });

  it('gear without any marking is not taken for lashing gear', () => {
    const unratedKind = without(kind(), 'rating');
    const unratedLine = without(line(), 'rating');
    expect(fitness(gear({ markings: [] }), unratedLine, context({ kind: unratedKind })).fit).toBe(true);
  });
});

describe('dimensions', () => {
  const need = (dimension: string, rule: 'atLeast' | 'atMost' | 'equals', value: string) =>
    ({ dimensions: [{ dimension, rule, value, source: 'common-practice' }] }) as const;

  it.each([
    ['lengthM', 'atLeast', '3.999', []],
    ['lengthM', 'atLeast', '4.0', []],
    ['lengthM', 'atLeast', '4.001', ['too_short']],
    ['jawMaximumMm', 'atLeast', '119', []],
    ['jawMaximumMm', 'atLeast', '120', []],
    ['jawMaximumMm', 'atLeast', '121', ['does_not_fit_panel']],
    ['jawMaximumMm', 'atMost', '119', ['does_not_fit_panel']],
    ['jawMaximumMm', 'atMost', '120.0', []],
    ['jawMaximumMm', 'atMost', '121', []],
    ['lengthM', 'atMost', '3.999', ['does_not_fit_panel']],
    ['lengthM', 'atMost', '4', []],
    ['barDiameterMm', 'atMost', '1', ['unknown_size']],
    ['forkWidthMm', 'equals', '99', ['does_not_fit_machine']],
    ['forkWidthMm', 'equals', '100.0', []],
    ['forkWidthMm', 'equals', '101', ['does_not_fit_machine']],
    ['barDiameterMm', 'atLeast', '1', ['unknown_size']],
    ['toString', 'atLeast', '1', ['unknown_size']],
  ] as const)('%s %s %s: %j', (dimension, rule, value, expected) => {
    expect(codes({ line: need(dimension, rule, value) })).toEqual(expected);
  });

  it.each(['', '0', '0.00', '-4', '4,5', 'long', '1e3'])('a size of %j is not known', (lengthM) => {
    expect(codes({ gear: { dimensions: { lengthM } }, line: need('lengthM', 'atLeast', '0.001') })).toEqual([
      'unknown_size',
    ]);
  });

  it.each([
    ['4.125', '4.1249', []],
    ['4.125', '4.125', []],
    ['4.125', '4.1251', ['too_short']],
  ] as const)('a size of %s to the millimetre for %s: %j', (lengthM, value, expected) => {
    expect(codes({ gear: { dimensions: { lengthM } }, line: need('lengthM', 'atLeast', value) })).toEqual(
      expected,
    );
  });

  it('gives the figures with the unit of the dimension’s name', () => {
    expect(judge({ line: need('lengthM', 'atLeast', '4.50') }).refusals).toEqual([
      {
        code: 'too_short',
        subject: 'lengthM',
        needed: '4.5',
        has: '4',
        unit: 'm',
        source: 'common-practice',
      },
    ]);
    expect(judge({ line: need('barDiameterMm', 'atLeast', '16') }).refusals).toEqual([
      { code: 'unknown_size', subject: 'barDiameterMm', needed: '16', unit: 'mm', source: 'common-practice' },
    ]);
  });
});

describe('refusals are complete and ordered', () => {
  it('two stand in the order of the list, and two of one code as they came', () => {
    const refusal = (code: RefusalCode, subject: string) => ({ code, subject, source: 'common-practice' });
    const [late, early] = [refusal('serial_unknown', 'a'), refusal('missing', 'b')];
    const twin = refusal('missing', 'c');
    expect(inOrder([late, early])).toEqual([early, late]);
    expect(inOrder([early, late])).toEqual([early, late]);
    expect(inOrder([twin, late, early])).toEqual([twin, early, late]);
  });

  it('a wreck is refused for everything at once, in the order of the list', () => {
    const wreck: Partial<Gear> = {
      condition: 'quarantined',
      missing: true,
      defectDeadline: day('2026-06-01'),
      serialKnown: false,
      labelLegible: false,
      certificateOnFile: false,
      markings: [{ measure: 'workingLoadLimit', value: '1', unit: 't' }],
      manufacturedOn: day('2000-01-01'),
      inspections: [examined('2024-06-01'), examined('2025-01-01', { outcome: 'unfit' })],
      events: [{ type: 'dropped', on: TODAY }],
      commitments: [promise('2026-06-01', '2026-06-16', { late: true })],
    };
    const serviceLife = { years: 10, from: 'manufacturedOn', source: { key: 'as-nzs-1891-4' } } as const;
    const dimension = {
      dimension: 'lengthM',
      rule: 'atLeast',
      value: '5',
      source: 'common-practice',
    } as const;
    const found = codes({
      gear: wreck,
      line: { duty: 'lashing', kind: 'shackle', dimensions: [dimension] },
      kind: { serviceLife },
      context: { homeStoreOnly: 2 },
    });
    expect(found).toEqual([
      'quarantined',
      'missing',
      'defect_deadline',
      'wrong_kind',
      'wrong_duty',
      'under_rated',
      'too_short',
      'failed_examination',
      'out_of_date',
      'examine_after_event',
      'past_service_life',
      'certificate_missing',
      'label_illegible',
      'serial_unknown',
      'promised_elsewhere',
      'not_back_yet',
      'at_another_store',
    ]);
    const order = found.map((code) => REFUSAL_CODES.indexOf(code));
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });
});
