import { describe, expect, it } from 'vitest';
import { fitness } from '../../src/rules/fitness/fitness.js';
import type { KindDefinition } from '../../src/rules/gear/kind.js';
import type { RatingNeed } from '../../src/rules/lines/need.js';
import type { Marking } from '../../src/rules/quantities/marking.js';
import { context, gear, kind, line, scheme, without } from './example-gear.js';

const wll = (value: string, unit: string): Marking => ({ measure: 'workingLoadLimit', value, unit });
const lc = (value: string, unit: string): Marking => ({ measure: 'lashingCapacity', value, unit });
const kilograms = (value: string): RatingNeed => ({ measure: 'workingLoadLimit', value, unit: 'kg' });

const lashingKind: Partial<KindDefinition> = {
  duties: ['lashing'],
  rating: {
    measure: 'lashingCapacity',
    units: ['daN', 'kN', 'kg'],
    required: true,
    source: { key: 'en-12195-2' },
  },
};

function rate(markings: readonly Marking[], rating: RatingNeed, kindChanges: Partial<KindDefinition> = {}) {
  const duty = rating.measure === 'lashingCapacity' ? 'lashing' : 'lifting';
  const verdict = fitness(gear({ markings }), line({ rating, duty }), context({ kind: kind(kindChanges) }));
  return { ...verdict, codes: verdict.refusals.map(({ code }) => code) };
}

describe('a working load limit against a mass', () => {
  it.each([
    ['1', 't', '999.999', []],
    ['1', 't', '1000', []],
    ['1', 't', '1000.001', ['under_rated']],
    ['1.0', 't', '1000.0', []],
    // 24 FR 5348 (1959): 3 300 lb are 1 496.854 821 kg exactly.
    ['3300', 'lb', '1496.854821', []],
    ['3300', 'lb', '1496.8548210001', ['under_rated']],
    ['3300', 'lb', '1496.8548209999', []],
  ])('%s %s for %s kg: %j', (value, unit, need, expected) => {
    expect(rate([wll(value, unit)], kilograms(need)).codes).toEqual(expected);
  });

  it('gives both figures in SI and cites the rule of the kind', () => {
    expect(rate([wll('1', 't')], kilograms('1000.50')).refusals).toEqual([
      { code: 'under_rated', needed: '1000.5', has: '1000', unit: 'kg', source: 'loler-1998' },
    ]);
  });

  it('shows the conversion of the mark, and none for a mark in SI', () => {
    const [working] = rate([wll('3300', 'lb')], kilograms('1000')).workings;
    expect(working).toEqual({
      title: 'Marking in SI',
      formula: 'R = marking × factor',
      inputs: [
        { name: 'marking', value: '3300', unit: 'lb' },
        { name: 'factor', value: '0.45359237', unit: 'kg per lb' },
      ],
      result: { name: 'R', value: '1496.854821', unit: 'kg' },
      source: 'nist-sp811',
    });
    expect(rate([wll('1500', 'kg')], kilograms('1000')).workings.map(({ title }) => title)).toEqual([
      'Due by interval',
    ]);
  });

  it('of several marks the lowest counts, in any order and unit', () => {
    const marks = [wll('2', 't'), wll('3300', 'lb'), wll('1800', 'kg')];
    expect(rate(marks, kilograms('1496.854821')).codes).toEqual([]);
    expect(rate(marks, kilograms('1496.86')).codes).toEqual(['under_rated']);
    expect(rate([...marks].reverse(), kilograms('1496.86')).refusals[0]?.has).toBe('1496.854821');
  });
});

describe('the ratio of rating to need', () => {
  it.each([
    ['2000', '1500', '1.333'],
    ['1500', '1500', '1'],
    ['1499.9', '1500', '0.999'],
    ['5000', '3', '1666.666'],
  ])('%s over %s is %s, rounded down', (has, need, ratio) => {
    expect(rate([wll(has, 'kg')], kilograms(need)).ratingRatio?.toString()).toBe(ratio);
  });

  it('is absent where nothing is needed or nothing compares', () => {
    const nothing = rate([wll('2', 't')], kilograms('0'));
    expect(nothing.codes).toEqual([]);
    expect(nothing.ratingRatio).toBeUndefined();
    expect(rate([], kilograms('1')).ratingRatio).toBeUndefined();
  });
});

describe('mass is not force', () => {
  const newtons = (value: string): RatingNeed => ({ measure: 'lashingCapacity', value, unit: 'N' });

  it('forces compare as forces', () => {
    expect(rate([lc('2500', 'daN')], newtons('25000'), lashingKind).codes).toEqual([]);
    expect(rate([lc('2500', 'daN')], newtons('25000.01'), lashingKind).codes).toEqual(['under_rated']);
    expect(rate([lc('25', 'kN')], newtons('24999.99'), lashingKind).codes).toEqual([]);
  });

  it('a capacity stamped in kilograms meets a force only through gravity, and the working says so', () => {
    // 2 500 kg at 9.806 65 m/s2 (3rd CGPM, 1901) press with 24 516.625 N.
    const equal = rate([lc('2500', 'kg')], newtons('24516.625'), lashingKind);
    expect(equal.codes).toEqual([]);
    expect(equal.workings[0]).toMatchObject({ title: 'Mass as force', source: 'nist-sp811' });
    expect(equal.workings[0]?.result).toEqual({ name: 'F', value: '24516.625', unit: 'N' });
    const over = rate([lc('2500', 'kg')], newtons('24516.626'), lashingKind);
    expect(over.refusals).toEqual([
      { code: 'under_rated', needed: '24516.626', has: '24516.625', unit: 'N', source: 'en-12195-2' },
    ]);
    expect(over.ratingRatio?.toString()).toBe('0.999');
  });

  it('a limit stamped as a force meets a mass the same way', () => {
    expect(rate([wll('9.80665', 'kN')], kilograms('1000')).codes).toEqual([]);
    const over = rate([wll('9.80665', 'kN')], kilograms('1000.001'));
    expect(over.refusals).toMatchObject([
      { code: 'under_rated', needed: '9806.65980665', has: '9806.65', unit: 'N' },
    ]);
    expect(over.workings.map(({ title }) => title)).toEqual([
      'Mass as force',
      'Marking in SI',
      'Due by interval',
    ]);
  });

  it('of a mark in kilograms and one in newtons the lower counts', () => {
    expect(rate([lc('2500', 'daN'), lc('2500', 'kg')], newtons('24516.625'), lashingKind).codes).toEqual([]);
    expect(rate([lc('2500', 'daN'), lc('2500', 'kg')], newtons('24516.626'), lashingKind).codes).toEqual([
      'under_rated',
    ]);
    expect(rate([lc('2500', 'daN'), lc('2600', 'kg')], newtons('25000.1'), lashingKind).codes).toEqual([
      'under_rated',
    ]);
  });
});

describe('ratings that do not compare', () => {
  it('another measure, another dimension, or a unit the kind is not stamped in', () => {
    const persons: RatingNeed = { measure: 'ratedPersons', value: '2', unit: 'persons' };
    expect(rate([wll('2', 't')], persons).codes).toEqual(['rating_not_comparable']);
    expect(rate([{ measure: 'ratedCapacity', value: '2', unit: 't' }], kilograms('1')).codes).toEqual([
      'rating_not_comparable',
    ]);
    expect(rate([{ measure: 'ratedPersons', value: '2000', unit: 'kg' }], persons).codes).toEqual([
      'rating_not_comparable',
    ]);
    expect(rate([wll('2', 'shortTon')], kilograms('1')).codes).toEqual(['rating_not_comparable']);
    const verdict = rate([wll('2', 't'), wll('2', 'shortTon')], kilograms('1'));
    expect(verdict.refusals).toEqual([
      { code: 'rating_not_comparable', needed: '1', unit: 'kg', source: 'loler-1998' },
    ]);
  });

  it('persons are counted', () => {
    const persons = (value: string): RatingNeed => ({ measure: 'ratedPersons', value, unit: 'persons' });
    const mark: Marking = { measure: 'ratedPersons', value: '2', unit: 'persons' };
    expect(rate([mark], persons('2')).codes).toEqual([]);
    expect(rate([mark], persons('3')).codes).toEqual(['under_rated']);
  });
});

describe('unrated', () => {
  it.each([
    ['0', 'kg'],
    ['0.00', 't'],
    ['-800', 'kg'],
    ['', 'kg'],
    ['2,5', 't'],
    ['=600+200', 'kg'],
    ['see label', 'kg'],
    ['2', 'ton'],
    ['2', ''],
  ])('a mark of %j %j rates nothing, not even beside a good one', (value, unit) => {
    expect(rate([wll(value, unit)], kilograms('1')).codes).toEqual(['unrated']);
    expect(rate([wll('2', 't'), wll(value, unit)], kilograms('1')).codes).toEqual(['unrated']);
  });

  it('no mark at all', () => {
    expect(rate([], kilograms('1')).refusals).toEqual([
      { code: 'unrated', needed: '1', unit: 'kg', source: 'loler-1998' },
    ]);
  });

  it('where the line asks no rating, the kind may still require one', () => {
    const unratedLine = without(line(), 'rating');
    const optional = kind({
      rating: { measure: 'workingLoadLimit', units: ['kg'], required: false, source: { key: 'loler-1998' } },
    });
    const codes = (markings: readonly Marking[], definition: KindDefinition) =>
      fitness(gear({ markings }), unratedLine, context({ kind: definition })).refusals.map(
        ({ code }) => code,
      );
    expect(codes([], kind())).toEqual(['unrated']);
    expect(codes([wll('0', 'kg')], kind())).toEqual(['unrated']);
    expect(codes([{ measure: 'ratedCapacity', value: '2', unit: 't' }], kind())).toEqual(['unrated']);
    expect(codes([wll('2', 't')], kind())).toEqual([]);
    expect(codes([], optional)).toEqual([]);
  });

  it('nothing asked shows no working, whether a mark is required or not', () => {
    const optional = kind({
      rating: { measure: 'workingLoadLimit', units: ['t'], required: false, source: { key: 'loler-1998' } },
    });
    for (const definition of [kind(), optional]) {
      const asked = without(line(), 'rating');
      const verdict = fitness(gear(), asked, context({ kind: definition, scheme: scheme([]) }));
      expect(verdict.workings).toEqual([]);
    }
    expect(fitness(gear({ markings: [] }), line(), context({ scheme: scheme([]) })).workings).toEqual([]);
  });

  it('a mark on gear of a kind that carries none is compared as stamped', () => {
    const unratedKind = context({ kind: without(kind(), 'rating') });
    expect(fitness(gear({ markings: [wll('1500', 'kg')] }), line(), unratedKind).fit).toBe(true);
    const { refusals } = fitness(gear({ markings: [wll('1499', 'kg')] }), line(), unratedKind);
    expect(refusals).toMatchObject([{ code: 'under_rated', source: 'common-practice' }]);
  });

  it('a need that the kind is never rated for cites common practice', () => {
    const unratedKind = without(kind(), 'rating');
    const verdict = fitness(gear({ markings: [] }), line(), context({ kind: unratedKind }));
    expect(verdict.refusals).toMatchObject([{ code: 'unrated', source: 'common-practice' }]);
  });

  it('a need that is not a number is an error of the caller', () => {
    expect(() => rate([wll('2', 't')], kilograms('1,5'))).toThrow(RangeError);
  });
});
