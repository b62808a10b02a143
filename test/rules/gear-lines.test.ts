import { describe, expect, it } from 'vitest';
import { gearLines } from '../../src/rules/lines/gear-lines.js';
import type { MethodDefinition } from '../../src/rules/lines/method.js';
import { METHOD_WITH_JAW, catalogue, job, line, linesOf, problemsOf, TWO_CREWS } from './tall-panel-job.js';

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
    ['harnesses', 4, '2 crews × 2 persons aloft'],
    ['lanyards', 4, '2 crews × 2 persons aloft'],
    ['workPlatform', 2, '1 for each crew'],
  ])('ask for %s × %d: %s', (key, quantity) => {
    expect(line(job(), key).quantity).toBe(quantity);
  });

  // The heaviest panel is A2: 7.45 m × 1.21 m = 9.0145 m2; × 52 kg/m2 = 468.754 kg; × 1.10 = 515.6294 kg.
  // Packed: 515.6294 + 22 = 537.6294 kg. Half of that for each of two trolleys: 268.8147 kg.
  // As a force at 9.80665 m/s2 (NIST SP 811): 515.6294 × 9.80665 = 5056.59705551 N;
  // half of it 2528.298527755 N, a quarter of it 1264.1492638775 N.
  it.each([
    ['panelLifter', 'workingLoadLimit', '515.6294', 'kg'],
    ['hostMachine', 'ratedCapacity', '515.6294', 'kg'],
    ['strapsRoundWidth', 'lashingCapacity', '1264.1492638775', 'N'],
    ['strapsUnderBottomRail', 'lashingCapacity', '2528.298527755', 'N'],
    ['panelTrolleys', 'ratedCapacity', '268.8147', 'kg'],
    ['spreaderBar', 'workingLoadLimit', '537.6294', 'kg'],
    ['workPlatform', 'ratedPersons', '2', 'persons'],
  ])('rate each %s by %s, at least %s %s', (key, measure, value, unit) => {
    expect(line(job(), key).rating).toEqual({ measure, value, unit });
  });

  it.each(['safetyLines', 'harnesses', 'lanyards'])('ask no rating of %s', (key) => {
    expect(line(job(), key)).not.toHaveProperty('rating');
  });

  it('size the jaw by the thickest panel and the bar by the lifter head', () => {
    expect(line(job({ method: METHOD_WITH_JAW }), 'panelLifter').dimensions).toEqual([
      { dimension: 'jawMaximumMm', rule: 'atLeast', value: '112', source: 'common-practice' },
    ]);
    expect(line(job(), 'hostMachine').dimensions).toEqual([
      { dimension: 'barDiameterMm', rule: 'equals', value: '60', source: 'common-practice' },
    ]);
    expect(line(job(), 'strapsRoundWidth').dimensions).toEqual([]);
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

  it('show the arithmetic of each line, force included, and what it leaves out', () => {
    const { workings } = line(job(), 'strapsUnderBottomRail');
    expect(workings.map(({ result }) => `${result.value} ${result.unit}`)).toEqual([
      '6 ',
      '5056.59705551 N',
      '2528.298527755 N',
    ]);
    expect(workings[0]?.inputs.map(({ value }) => value)).toEqual(['2', '2', '2']);
    expect(workings[1]?.source).toBe('nist-sp811');
    expect(workings[2]?.inputs.map(({ value }) => value)).toEqual(['5056.59705551', '0.5']);
    expect(workings[2]?.caution).toContain('they do not lift it');
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
    const long = { dimension: 'lengthM', atLeast: '9.5', source: { key: 'common-practice' } };
    const method: MethodDefinition = {
      ...tall,
      lines: tall.lines.map((each) => (each.kind === 'safetyLine' ? { ...each, fits: [long] } : each)),
    };
    expect(line(job({ method }), 'safetyLines').dimensions).toEqual([
      { dimension: 'lengthM', rule: 'atLeast', value: '9.5', source: 'common-practice' },
    ]);
  });

  it('may share persons, counted up to whole ones', () => {
    const tall = catalogue.method('tall-panel');
    const shared = tall.lines.map((each) =>
      each.kind === 'workPlatform' ? { ...each, share: '0.5' } : each,
    );
    const counts = { ...TWO_CREWS, crews: 1, personsAloft: 5 };
    // half of 5 persons is 2.5: the platform must be rated for 3
    expect(line(job({ method: { ...tall, lines: shared }, counts }), 'workPlatform').rating?.value).toBe('3');
  });
});
