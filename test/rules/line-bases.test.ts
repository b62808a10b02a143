import { describe, expect, it } from 'vitest';
import { gearLines } from '../../src/rules/lines/gear-lines.js';
import type { MethodDefinition, MethodLine } from '../../src/rules/lines/method.js';
import { catalogue, job, line, linesOf, problemsOf, STATED, TWO_CREWS } from './tall-panel-job.js';

/** The tall-panel method with one line changed. */
function methodWith(key: string, changes: Partial<MethodLine>): MethodDefinition {
  const tall = catalogue.method('tall-panel');
  return { ...tall, lines: tall.lines.map((each) => (each.key === key ? { ...each, ...changes } : each)) };
}

describe('what a line is rated by', () => {
  // The heaviest panel is A2: 9.0145 m2 × 52 kg/m2 × 1.10 = 515.6294 kg, and 22 kg of packing.
  it.each([
    ['heaviestPanelKg', '515.6294'],
    ['heaviestPackedKg', '537.6294'],
  ] as const)('may be the panel itself, by %s', (ratingBasis, value) => {
    const method = methodWith('panelTrolleys', { ratingBasis });
    expect(line(job({ method }), 'panelTrolleys').rating?.value).toBe(value);
    expect(line(job({ method }), 'panelTrolleys')).not.toHaveProperty('unsettled');
  });

  it('may be nothing, though the kind is rated', () => {
    const found = line(
      job({ method: methodWith('panelTrolleys', { ratingBasis: 'none' }) }),
      'panelTrolleys',
    );
    expect(found).not.toHaveProperty('rating');
    expect(found).not.toHaveProperty('unsettled');
    expect(found.workings).toHaveLength(1);
  });

  it('is shown without a caution where the method has none', () => {
    const tall = catalogue.method('tall-panel');
    const lines = tall.lines.map(({ caution: _left, ...rest }) => rest);
    const [before, after] = [tall, { ...tall, lines }].map((method) =>
      line(job({ method }), 'strapsUnderBottomRail').workings.at(-1),
    );
    expect(before).toHaveProperty('caution');
    expect(after).not.toHaveProperty('caution');
  });

  it('names the kind that the catalogue lacks', () => {
    expect(() => gearLines(job({ method: methodWith('spreaderBar', { kind: 'crane' }) }))).toThrow(/'crane'/);
  });
});

describe('a size by a figure that is not stated', () => {
  it('is left out and leaves its line unsettled, and the lines that rest on it', () => {
    const lines = linesOf(job({ stated: STATED.filter(({ key }) => key !== 'liftHeightM') }));
    const unsettled = lines.filter((each) => each.unsettled);
    expect(unsettled.map(({ key }) => key).sort()).toEqual(['hostMachine', 'safetyLines']);
    for (const each of unsettled) {
      expect(each.unsettled).toContainEqual({ code: 'parameter_missing', subject: 'liftHeightM' });
    }
    expect(unsettled.find(({ key }) => key === 'safetyLines')?.dimensions).toEqual([]);
  });
});

describe('a size held against what the job states', () => {
  const source = { key: 'common-practice' };
  const method = methodWith('safetyLines', {
    fits: [{ dimension: 'lengthM', rule: 'atLeast', figure: 'liftHeightM', source }],
  });

  it('is that figure', () => {
    expect(line(job({ method }), 'safetyLines').dimensions).toEqual([
      { dimension: 'lengthM', rule: 'atLeast', value: '8.2', source: 'common-practice' },
    ]);
  });

  it('is unsettled, once, while the job does not state it', () => {
    const found = line(job({ method, stated: [] }), 'safetyLines');
    expect(found.dimensions).toEqual([]);
    expect(found.unsettled).toEqual([{ code: 'parameter_missing', subject: 'liftHeightM' }]);
  });
});

describe('a machine whose chart is asked', () => {
  it('is unsettled while the chart cannot be asked, though its own rating is known', () => {
    const method = methodWith('hostMachine', { ratingBasis: 'lifterLoadKg' });
    const stated = STATED.filter(({ key }) => key !== 'lifterCentreMm');
    const found = line(job({ method, stated }), 'hostMachine');
    expect(found.rating?.value).toBe('567.19234');
    expect(found.unsettled).toContainEqual({ code: 'parameter_missing', subject: 'lifterCentreMm' });
  });
});

describe('changes of several lines', () => {
  it('each change their own line and no other', () => {
    const adjustments = [
      { lineKey: 'spreaderBar', quantity: 3, reason: 'two docks' },
      { lineKey: 'panelTrolleys', quantity: 9, reason: 'long way' },
    ];
    expect(problemsOf(job({ adjustments }))).toEqual([]);
    const changed = linesOf(job({ adjustments })).filter(({ adjusted }) => adjusted);
    expect(changed.map(({ key, quantity }) => [key, quantity]).sort()).toEqual([
      ['panelTrolleys', 9],
      ['spreaderBar', 3],
    ]);
  });

  it('hold each size against the method’s own of that name', () => {
    // The jaw must take 112 mm and the bore 60 mm: 100 mm of bore is enough.
    const wanted = { dimension: 'headBoreMm', rule: 'atLeast', value: '100' } as const;
    const adjustments = [{ lineKey: 'panelLifter', dimensions: [wanted], reason: 'other bar' }];
    expect(problemsOf(job({ adjustments }))).toEqual([]);
  });

  it('replace two sizes of one line', () => {
    const dimensions = [
      { dimension: 'jawMaximumMm', rule: 'atLeast', value: '150' },
      { dimension: 'headBoreMm', rule: 'atLeast', value: '70' },
    ] as const;
    const adjustments = [{ lineKey: 'panelLifter', dimensions, reason: 'other bar' }];
    const found = line(job({ adjustments }), 'panelLifter').dimensions;
    expect(found.filter(({ dimension }) => dimension === 'jawMaximumMm')).toHaveLength(1);
    expect(found.filter(({ dimension }) => dimension === 'headBoreMm')).toHaveLength(1);
  });
});

describe('lifters and persons that the planner does not count', () => {
  it('are the method’s for each crew', () => {
    const tall = catalogue.method('tall-panel');
    const method = { ...tall, perCrew: { ...tall.perCrew, lifters: 3, personsAloft: 4 } };
    // 2 crews × 3 lifters, 2 crews × 4 persons
    expect(line(job({ method, counts: TWO_CREWS }), 'panelLifter').quantity).toBe(6);
    expect(line(job({ method, counts: TWO_CREWS }), 'harnesses').quantity).toBe(8);
  });
});
