import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/rules/quantities/exact.js';
import { gearLines } from '../../src/rules/lines/gear-lines.js';
import type { FitRequirement, MethodDefinition } from '../../src/rules/lines/method.js';
import { catalogue, job, line, linesOf, problemsOf, STATED, TWO_CREWS } from './tall-panel-job.js';

describe('gear lines of the tall-panel method (its counts and shares are common practice, no source)', () => {
  // Two crews, a lifter and two persons aloft for each; three panels on wheels, one truck.
  it.each([
    ['panelLifter', 2, '1 for each of 2 lifters'],
    ['hostMachine', 2, '1 for each of 2 lifters'],
    ['strapsRoundWidth', 4, '2 for each of 2 lifters'],
    ['strapsUnderBottomRail', 6, '2 for each of 2 lifters, 2 spares'],
    ['safetyLines', 4, '2 for each of 2 lifters'],
    ['panelTrolleys', 6, '2 for each of 3 panels on wheels'],
    ['spreaderBar', 1, '1 for the truck'],
    ['topLegs', 2, '2 for the truck'],
    ['dropSlings', 2, '2 for the truck'],
    ['shackles', 4, '4 for the truck'],
    ['harnesses', 4, '2 crews × 2 persons aloft'],
    ['lanyards', 4, '2 crews × 2 persons aloft'],
    ['workPlatform', 2, '1 for each crew'],
  ])('ask for %s × %d: %s', (key, quantity) => {
    expect(line(job(), key).quantity).toBe(quantity);
  });

  // The heaviest panel is A2: 7.45 m × 1.21 m = 9.0145 m2; × 52 kg/m2 = 468.754 kg; × 1.10 = 515.6294 kg.
  // Packed: 515.6294 + 22 = 537.6294 kg. Each lift × 1.10 for handling: 567.19234 kg bare, 591.39234 kg packed.
  // Half of the packed load at each drop: 295.69617 kg. The bar of 60 kg adds 30 kg at each end: 325.69617 kg; legs of
  // 2.5 m over drops 3.0 m apart rise √(2.5² − 1.5²) = 2.0 m, so each pulls 325.69617 × 2.5 ÷ 2.0 = 407.1202125 kg.
  // Half of 537.6294 kg on each trolley: 268.8147 kg. On the host: 567.19234 + 180 + 30 = 777.19234 kg.
  // As a force at 9.80665 m/s2 (NIST SP 811): 515.6294 × 9.80665 = 5056.59705551 N; half of it 2528.298527755 N;
  // half of the sideways half 1264.149263878 N, rounded up to a millionth.
  it.each([
    ['panelLifter', 'workingLoadLimit', '567.19234', 'kg'],
    ['hostMachine', 'ratedCapacity', '777.19234', 'kg'],
    ['strapsRoundWidth', 'lashingCapacity', '1264.149264', 'N'],
    ['strapsUnderBottomRail', 'lashingCapacity', '2528.298528', 'N'],
    ['panelTrolleys', 'ratedCapacity', '268.8147', 'kg'],
    ['spreaderBar', 'workingLoadLimit', '591.39234', 'kg'],
    ['dropSlings', 'workingLoadLimit', '295.69617', 'kg'],
    ['topLegs', 'workingLoadLimit', '407.120213', 'kg'],
    ['shackles', 'workingLoadLimit', '407.120213', 'kg'],
    ['workPlatform', 'ratedPersons', '2', 'persons'],
  ])('rate each %s by %s, at least %s %s', (key, measure, value, unit) => {
    expect(line(job(), key).rating).toEqual({ measure, value, unit });
  });

  it.each(['safetyLines', 'harnesses', 'lanyards'])('ask no rating of %s', (key) => {
    expect(line(job(), key)).not.toHaveProperty('rating');
  });

  // Round panel and lifter: 2 × (1.21 + 0.112 + 0.25) + 1 = 4.144 m. Down to the bottom rail from the middle and up
  // again: 7.45 + 0.112 + 0.25 + 1 = 8.812 m. Lines: 8.2 + 4 = 12.2 m. Platform: 7.45 − 1.5 = 5.95 m.
  it.each([
    ['panelLifter', 'jawMaximumMm', 'atLeast', '112'],
    ['panelLifter', 'jawMinimumMm', 'atMost', '112'],
    ['panelLifter', 'headBoreMm', 'atLeast', '60'],
    ['hostMachine', 'barDiameterMm', 'equals', '60'],
    ['strapsRoundWidth', 'lengthM', 'atLeast', '4.144'],
    ['strapsUnderBottomRail', 'lengthM', 'atLeast', '8.812'],
    ['safetyLines', 'lengthM', 'atLeast', '12.2'],
    ['spreaderBar', 'lengthM', 'atLeast', '3.0'],
    ['workPlatform', 'platformHeightM', 'atLeast', '5.95'],
  ])('size %s by %s, %s %s', (key, dimension, rule, value) => {
    const size = { dimension, rule, value: Exact.of(value).toString(), source: 'common-practice' };
    expect(line(job(), key).dimensions).toContainEqual(size);
  });

  it('ask the chart of the host machine for the lift without the lifter, which is its attachment', () => {
    expect(line(job(), 'hostMachine').hosting).toEqual({
      loadKg: '597.19234',
      attachmentMassKg: '180',
      attachmentCentreMm: '200',
      attachmentDepthMm: '250',
      loadDepthMm: '56',
      heightMm: '8200',
    });
    expect(linesOf(job()).filter(({ hosting }) => hosting)).toHaveLength(1);
  });

  it('ask for no platform, harness or lanyard where nobody goes aloft', () => {
    const grounded = job({ counts: { ...TWO_CREWS, personsAloft: 0 } });
    for (const key of ['workPlatform', 'harnesses', 'lanyards']) {
      expect(line(grounded, key)).toMatchObject({ quantity: 0 });
    }
    expect(line(grounded, 'workPlatform')).not.toHaveProperty('rating');
  });

  it('say which panel rules', () => {
    const result = gearLines(job());
    expect(result.ok && result.ruling.heaviest.panel.name).toBe('A2');
  });

  it('show the arithmetic of each line, and what it leaves out', () => {
    expect(line(job(), 'strapsUnderBottomRail').workings).toEqual([
      {
        title: 'Straps under the bottom rail, and spares: quantity',
        formula: 'lifters in use × items for each + spares',
        inputs: [
          { name: 'lifters in use', value: '2', unit: '' },
          { name: 'items for each', value: '2', unit: '' },
          { name: 'spares', value: '2', unit: '' },
        ],
        result: { name: 'quantity', value: '6', unit: '' },
        source: 'common-practice',
      },
      {
        title: 'Straps under the bottom rail, and spares: rating of each',
        formula: 'force in a strap under the bottom rail',
        inputs: [{ name: 'force in a strap under the bottom rail', value: '2528.298528', unit: 'N' }],
        result: { name: 'least rating', value: '2528.298528', unit: 'N' },
        source: 'common-practice',
        caution:
          "The two together hold the panel's whole weight, taken as shared equally. They secure the panel; they do not lift it.",
      },
    ]);
  });
});

describe('figures that a job states for itself', () => {
  it('take the place of the method’s', () => {
    const stated = [...STATED, { key: 'handlingFactor', value: '1.25', reason: 'lift plan' }];
    expect(line(job({ stated }), 'panelLifter').rating?.value).toBe('644.53675');
  });

  it('leave what depends on a missing one unsettled, and nothing else', () => {
    const lines = linesOf(job({ stated: STATED.filter(({ key }) => key !== 'lifterMassKg') }));
    const unsettled = lines.filter((each) => each.unsettled);
    expect(unsettled.map(({ key }) => key)).toEqual(['hostMachine']);
    expect(unsettled[0]).toMatchObject({
      unsettled: [{ code: 'parameter_missing', subject: 'lifterMassKg' }],
      dimensions: [{ dimension: 'barDiameterMm', value: '60' }],
    });
    expect(unsettled[0]).not.toHaveProperty('rating');
    expect(unsettled[0]).not.toHaveProperty('hosting');
  });

  it('leave every line that rests on an impossible geometry unsettled', () => {
    const stated = [...STATED, { key: 'topLegLengthM', value: '1.5', reason: 'in the store' }];
    const lines = linesOf(job({ stated }));
    expect(lines.filter((each) => each.unsettled).map(({ key }) => key)).toEqual([
      'spreaderBar',
      'topLegs',
      'dropSlings',
      'shackles',
    ]);
    expect(line(job({ stated }), 'topLegs').unsettled).toMatchObject([{ code: 'leg_too_short' }]);
  });

  it.each([
    [
      { key: 'wingspanM', value: '1', reason: 'x' },
      { code: 'unknown_parameter', subject: 'wingspanM' },
    ],
    [
      { key: 'handlingFactor', value: '1,1', reason: 'x' },
      { code: 'parameter_unreadable', subject: 'handlingFactor' },
    ],
    [
      { key: 'handlingFactor', value: '-1', reason: 'x' },
      { code: 'parameter_unreadable', subject: 'handlingFactor' },
    ],
    [
      { key: 'castorsPerTrolley', value: '4.5', reason: 'x' },
      { code: 'parameter_not_whole', subject: 'castorsPerTrolley' },
    ],
    [
      { key: 'handlingFactor', value: '0.999', reason: 'x' },
      { code: 'parameter_out_of_range', subject: 'handlingFactor', least: '1', most: '2', unit: '' },
    ],
    [
      { key: 'dropSpacingM', value: '12.001', reason: 'x' },
      { code: 'parameter_out_of_range', subject: 'dropSpacingM', least: '0.5', most: '12', unit: 'm' },
    ],
    [
      { key: 'handlingFactor', value: '1.2', reason: ' ' },
      { code: 'reason_missing', subject: 'handlingFactor' },
    ],
    [
      { key: 'liftHeightM', value: '8', reason: 'x' },
      { code: 'parameter_stated_twice', subject: 'liftHeightM' },
    ],
  ])('are refused: %o', (wrong, problem) => {
    expect(problemsOf(job({ stated: [...STATED, wrong] }))).toEqual([problem]);
  });

  it.each(['1', '2'])('may be at the limit: a handling factor of %s', (value) => {
    expect(problemsOf(job({ stated: [...STATED, { key: 'handlingFactor', value, reason: 'x' }] }))).toEqual(
      [],
    );
  });
});

describe('the counts of a job', () => {
  it('override what the method starts from', () => {
    const counts = { ...TWO_CREWS, lifters: 3, personsAloft: 5 };
    expect(line(job({ counts }), 'strapsRoundWidth').quantity).toBe(6);
    expect(line(job({ counts }), 'harnesses').quantity).toBe(5);
    // 5 persons among 2 crews: one platform has 3 on it
    expect(line(job({ counts }), 'workPlatform').rating?.value).toBe('3');
  });

  it('may be nought, and then need no spares either', () => {
    const counts = { crews: 1, lifters: 0, personsAloft: 0, panelsOnWheels: 0, trucksUnloading: 0 };
    const quantities = linesOf(job({ counts })).map(({ key, quantity }) => [key, quantity]);
    expect(Object.fromEntries(quantities)).toMatchObject({
      strapsUnderBottomRail: 0,
      spreaderBar: 0,
      workPlatform: 0,
    });
  });

  it.each([
    ['crews', 0],
    ['crews', 1.5],
    ['crews', 1001],
    ['lifters', -1],
    ['personsAloft', Number.NaN],
    ['panelsOnWheels', -1],
    ['trucksUnloading', 0.5],
  ])('refuse %s of %d', (name, value) => {
    const counts = { ...TWO_CREWS, [name]: value };
    expect(problemsOf(job({ counts }))).toEqual([{ code: 'count_out_of_range', subject: name }]);
  });

  it('take a thousand crews', () => {
    expect(line(job({ counts: { ...TWO_CREWS, crews: 1000 } }), 'panelLifter').quantity).toBe(1000);
  });
});

describe('a job with faults of every sort', () => {
  it('hears of all of them at once', () => {
    const input = job({
      panels: [],
      counts: { ...TWO_CREWS, crews: 0 },
      adjustments: [{ lineKey: 'spreaderBar', quantity: -1, reason: '' }],
    });
    expect(problemsOf(input)).toEqual([
      { code: 'no_panels' },
      { code: 'count_out_of_range', subject: 'crews' },
      { code: 'reason_missing', subject: 'spreaderBar' },
      { code: 'quantity_out_of_range', subject: 'spreaderBar' },
    ]);
  });

  it('cannot name a kind that the catalogue lacks', () => {
    expect(() => gearLines(job({ kinds: [] }))).toThrow(RangeError);
  });
});

describe('another method', () => {
  it('may ask a least size of its own', () => {
    const tall = catalogue.method('tall-panel');
    const long: FitRequirement = {
      dimension: 'lengthM',
      rule: 'atLeast',
      value: '9.5',
      source: { key: 'common-practice' },
    };
    const method: MethodDefinition = {
      ...tall,
      lines: tall.lines.map((each) => (each.kind === 'safetyLine' ? { ...each, fits: [long] } : each)),
    };
    expect(line(job({ method }), 'safetyLines').dimensions).toEqual([
      { dimension: 'lengthM', rule: 'atLeast', value: '9.5', source: 'common-practice' },
    ]);
  });
});

describe('the method of lighter panels', () => {
  const light = job({
    method: catalogue.method('light-panel'),
    panels: [
      {
        name: 'L1',
        heightMm: '4200',
        widthMm: '1000',
        thicknessMm: '85',
        massKg: '160',
        packingKg: '10',
        count: 30,
      },
    ],
  });

  it('asks for other lines by the same rules, without a line of code', () => {
    expect(linesOf(light).map(({ key, quantity }) => [key, quantity])).toEqual([
      ['panelLifter', 2],
      ['hostMachine', 2],
      ['strapsRoundWidth', 4],
      ['strapsUnderBottomRail', 5],
      ['safetyLines', 4],
      ['panelTrolleys', 6],
    ]);
  });

  // 160 kg × 1.10; (160 + 10) ÷ 2; 2 × (1.0 + 0.085 + 0.25) + 0.8; 8.2 + 3.
  it('takes its own figures', () => {
    expect(line(light, 'panelLifter').rating?.value).toBe('176');
    expect(line(light, 'panelTrolleys').rating?.value).toBe('85');
    expect(line(light, 'strapsRoundWidth').dimensions[0]?.value).toBe('3.47');
    expect(line(light, 'safetyLines').dimensions[0]?.value).toBe('11.2');
  });
});
