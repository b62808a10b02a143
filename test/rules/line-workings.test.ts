import { describe, expect, it } from 'vitest';
import { checkCounts } from '../../src/rules/lines/job-counts.js';
import type { AddedLine } from '../../src/rules/lines/line-change.js';
import type { MethodDefinition } from '../../src/rules/lines/method.js';
import { catalogue, job, line, problemsOf, TWO_CREWS } from './tall-panel-job.js';

const bare = (name: string, value: string) => ({ name, value, unit: '' });

describe('the working of a quantity', () => {
  const tall = catalogue.method('tall-panel');
  const onceAJob: MethodDefinition = {
    ...tall,
    lines: tall.lines.map((each) => (each.key === 'spreaderBar' ? { ...each, per: 'job' } : each)),
  };

  // Two crews with one lifter and two persons aloft each, three panels on wheels, one truck.
  it.each([
    ['workPlatform', tall, 'crews', '2', '1', '2'],
    ['panelLifter', tall, 'lifters in use', '2', '1', '2'],
    ['panelTrolleys', tall, 'panels on wheels at one time', '3', '2', '6'],
    ['spreaderBar', tall, 'trucks unloading at one time', '1', '1', '1'],
    ['harnesses', tall, 'persons aloft', '4', '1', '4'],
    ['spreaderBar', onceAJob, 'jobs', '1', '1', '1'],
  ])('of %s names what it is counted by', (key, method, name, count, each, quantity) => {
    const found = line(job({ method }), key);
    expect(found.workings[0]).toEqual({
      title: `${found.label}: quantity`,
      formula: `${name} × items for each + spares`,
      inputs: [bare(name, count), bare('items for each', each), bare('spares', '0')],
      result: bare('quantity', quantity),
      source: 'common-practice',
    });
  });
});

describe('the working of persons aloft', () => {
  it('divides them among the crews, counted up to whole ones', () => {
    const platform = line(job({ counts: { ...TWO_CREWS, personsAloft: 5 } }), 'workPlatform');
    const name = 'persons aloft in one crew';
    expect(platform.workings.slice(1)).toMatchObject([
      {
        title: 'Persons aloft in one crew',
        formula: 'persons aloft / crews, rounded up',
        inputs: [bare('persons aloft', '5'), bare('crews', '2')],
        result: { name, value: '3', unit: 'persons' },
        source: 'common-practice',
      },
      {
        title: `${platform.label}: rating of each`,
        formula: name,
        inputs: [{ name, value: '3', unit: 'persons' }],
        result: { name: 'least rating', value: '3', unit: 'persons' },
      },
    ]);
  });
});

describe('the working of what a person states', () => {
  const added: AddedLine = {
    key: 'added1',
    label: 'Slings under the frame',
    kind: 'sling',
    duty: 'lifting',
    quantity: 2,
    rating: { value: '0.8', unit: 't' },
    reason: 'frame comes first',
  };

  it('is the rating of each on an added line, as written and in SI', () => {
    expect(line(job({ added: [added] }), 'added1')).toStrictEqual({
      key: 'added1',
      label: 'Slings under the frame',
      kind: 'sling',
      duty: 'lifting',
      quantity: 2,
      rating: { measure: 'workingLoadLimit', value: '800', unit: 'kg' },
      dimensions: [],
      workings: [
        {
          title: 'Slings under the frame: rating of each, stated for this job',
          formula: 'as stated',
          inputs: [{ name: 'stated rating', value: '0.8', unit: 't' }],
          result: { name: 'least rating', value: '800', unit: 'kg' },
          source: 'common-practice',
        },
      ],
      adjusted: { reason: 'frame comes first', methodQuantity: 0 },
    });
  });

  it('is the load on one hitch where the sling is hitched', () => {
    const { workings } = line(job({ added: [{ ...added, hitch: { mode: 'choked' } }] }), 'added1');
    expect(workings[0]).toEqual({
      title: 'Slings under the frame: load on one hitch, stated for this job',
      formula: 'as stated',
      inputs: [{ name: 'stated load', value: '0.8', unit: 't' }],
      result: { name: 'load on the hitch', value: '800', unit: 'kg' },
      source: 'common-practice',
    });
    expect(workings).toHaveLength(2);
  });

  it('comes after the method’s own on an adjusted line', () => {
    const before = line(job(), 'panelTrolleys');
    const rating = { value: '2000', unit: 'lb' };
    const adjustments = [{ lineKey: 'panelTrolleys', rating, reason: 'ramp' }];
    const after = line(job({ adjustments }), 'panelTrolleys');
    expect(after.workings.slice(0, -1)).toEqual(before.workings);
    // 24 FR 5348 (1959): 2 000 lb are 907.184 74 kg.
    expect(after.workings.at(-1)).toEqual({
      title: `${before.label}: rating of each, stated for this job`,
      formula: 'as stated',
      inputs: [{ name: 'stated rating', value: '2000', unit: 'lb' }],
      result: { name: 'least rating', value: '907.18474', unit: 'kg' },
      source: 'common-practice',
    });
  });

  it('is none where only the number or a size is changed', () => {
    const before = line(job(), 'panelTrolleys');
    const adjustments = [{ lineKey: 'panelTrolleys', quantity: 8, reason: 'ramp' }];
    const after = line(job({ adjustments }), 'panelTrolleys');
    expect(after.workings).toEqual(before.workings);
    expect(after.rating).toEqual(before.rating);
    expect(after.dimensions).toEqual(before.dimensions);
  });

  it('is none on an added line of a kind that carries no rating', () => {
    const line1: AddedLine = {
      key: 'added1',
      label: 'A longer line',
      kind: 'safetyLine',
      duty: 'steadying',
      quantity: 1,
      reason: 'wind',
    };
    const found = line(job({ added: [line1] }), 'added1');
    expect(found.workings).toEqual([]);
    expect(found).not.toHaveProperty('rating');
  });
});

describe('a size that a person asks for', () => {
  const sized = (lineKey: string, dimension: string, value: string) =>
    job({
      adjustments: [{ lineKey, dimensions: [{ dimension, rule: 'atLeast', value }], reason: 'high stage' }],
    });

  it('leaves the method’s other sizes as they are', () => {
    const [before, after] = [job(), sized('panelLifter', 'jawMaximumMm', '150')].map(
      (input) => line(input, 'panelLifter').dimensions,
    );
    const others = before?.filter(({ dimension }) => dimension !== 'jawMaximumMm') ?? [];
    expect(others.length).toBeGreaterThan(0);
    expect(after).toEqual([
      ...others,
      { dimension: 'jawMaximumMm', rule: 'atLeast', value: '150', source: 'common-practice' },
    ]);
  });

  it.each([
    ['12.25', []],
    ['012.2500', []],
    ['.5', [{ code: 'dimension_unreadable', subject: 'safetyLines', dimension: 'lengthM' }]],
    ['0.00', [{ code: 'dimension_unreadable', subject: 'safetyLines', dimension: 'lengthM' }]],
  ])('is read as plain decimal text: %s', (value, problems) => {
    expect(problemsOf(sized('safetyLines', 'lengthM', value))).toEqual(problems);
  });
});

describe('the counts of a job, one by one', () => {
  const names = ['crews', 'lifters', 'personsAloft', 'panelsOnWheels', 'trucksUnloading'];

  it.each(names)('%s may be one and a thousand, not more and not in part', (name) => {
    const problems = (value: number) => checkCounts({ ...TWO_CREWS, [name]: value });
    expect([problems(1), problems(1000)]).toEqual([[], []]);
    for (const value of [-1, 0.5, 1001, Number.POSITIVE_INFINITY]) {
      expect(problems(value)).toEqual([{ code: 'count_out_of_range', subject: name }]);
    }
    expect(problems(0)).toEqual(name === 'crews' ? [{ code: 'count_out_of_range', subject: name }] : []);
  });
});
