import { describe, expect, it } from 'vitest';
import type { GearLinesInput } from '../../src/rules/lines/gear-lines.js';
import type { AddedLine, LineAdjustment } from '../../src/rules/lines/line-change.js';
import { job, line, linesOf, problemsOf } from './tall-panel-job.js';

describe('an adjusted line', () => {
  function adjusted(adjustment: Omit<LineAdjustment, 'reason'>): GearLinesInput {
    return job({ adjustments: [{ reason: 'narrow stage', ...adjustment }] });
  }

  it('keeps what the method gave beside the reason', () => {
    const straps = line(adjusted({ lineKey: 'strapsRoundWidth', quantity: 7 }), 'strapsRoundWidth');
    expect(straps.quantity).toBe(7);
    expect(straps.adjusted).toEqual({ reason: 'narrow stage', methodQuantity: 4 });
    expect(line(job(), 'strapsRoundWidth')).not.toHaveProperty('adjusted');
  });

  it('may be dropped to nothing and stays in sight', () => {
    const bar = line(adjusted({ lineKey: 'spreaderBar', quantity: 0 }), 'spreaderBar');
    expect([bar.quantity, bar.adjusted?.methodQuantity]).toEqual([0, 1]);
  });

  it('takes a higher rating in any unit of the measure, shown in a working', () => {
    const trolleys = line(
      adjusted({ lineKey: 'panelTrolleys', rating: { value: '0.5', unit: 't' } }),
      'panelTrolleys',
    );
    expect(trolleys.quantity).toBe(6);
    expect(trolleys.rating).toEqual({ measure: 'ratedCapacity', value: '500', unit: 'kg' });
    expect(trolleys.workings.at(-1)?.inputs).toEqual([{ name: 'stated rating', value: '0.5', unit: 't' }]);
  });

  it('takes a rating equal to the method, and none below it', () => {
    const wanted = (value: string) => adjusted({ lineKey: 'panelLifter', rating: { value, unit: 'kg' } });
    expect(problemsOf(wanted('567.19234'))).toEqual([]);
    expect(problemsOf(wanted('567.19233'))).toEqual([
      { code: 'rating_below_method', subject: 'panelLifter', least: '567.19234', unit: 'kg' },
    ]);
  });

  it.each([
    { rating: { value: '6000', unit: 'kg' }, why: 'a mass' },
    { rating: { value: '600', unit: 'ton' }, why: 'no unit' },
    { rating: { value: '-600', unit: 'daN' }, why: 'below nought' },
    { rating: { value: '0', unit: 'daN' }, why: 'nought' },
    { rating: { value: '6e3', unit: 'daN' }, why: 'no plain number' },
  ])('refuses a lashing capacity of $rating.value $rating.unit: $why', ({ rating }) => {
    const problem = { code: 'rating_unreadable', subject: 'strapsRoundWidth' };
    expect(problemsOf(adjusted({ lineKey: 'strapsRoundWidth', rating }))).toEqual([problem]);
  });

  it('refuses a rating for what carries none', () => {
    const input = adjusted({ lineKey: 'safetyLines', rating: { value: '100', unit: 'daN' } });
    expect(problemsOf(input)).toEqual([{ code: 'rating_not_of_kind', subject: 'safetyLines' }]);
  });

  it('adds a size, or replaces the one the method gives', () => {
    const long = { dimension: 'lengthM', rule: 'atLeast', value: '8.5' } as const;
    const straps = line(adjusted({ lineKey: 'strapsRoundWidth', dimensions: [long] }), 'strapsRoundWidth');
    expect(straps.dimensions).toEqual([{ ...long, source: 'common-practice' }]);
    const thin = { dimension: 'barDiameterMm', rule: 'equals', value: '50' } as const;
    const machine = line(adjusted({ lineKey: 'hostMachine', dimensions: [thin] }), 'hostMachine');
    expect(machine.dimensions).toEqual([{ ...thin, source: 'common-practice' }]);
  });

  it('never takes a least size below the method', () => {
    const jaw = (value: string) =>
      adjusted({
        lineKey: 'panelLifter',
        dimensions: [{ dimension: 'jawMaximumMm', rule: 'atLeast', value }],
      });
    expect(problemsOf(jaw('112'))).toEqual([]);
    expect(problemsOf(jaw('111.9'))).toEqual([
      { code: 'dimension_below_method', subject: 'panelLifter', dimension: 'jawMaximumMm', least: '112' },
    ]);
  });

  it.each([
    ['lengthFt', '8', 'unknown_dimension'],
    ['lengthM', '0', 'dimension_unreadable'],
    ['lengthM', '8 m', 'dimension_unreadable'],
  ])('refuses the size %s of %s: %s', (dimension, value, code) => {
    const input = adjusted({ lineKey: 'safetyLines', dimensions: [{ dimension, rule: 'atLeast', value }] });
    expect(problemsOf(input)).toEqual([{ code, subject: 'safetyLines', dimension }]);
  });

  it.each([-1, 1.5, 10_001, Number.NaN])('refuses a quantity of %d', (quantity) => {
    const problem = { code: 'quantity_out_of_range', subject: 'spreaderBar' };
    expect(problemsOf(adjusted({ lineKey: 'spreaderBar', quantity }))).toEqual([problem]);
  });

  it('takes a quantity of ten thousand', () => {
    expect(line(adjusted({ lineKey: 'spreaderBar', quantity: 10_000 }), 'spreaderBar').quantity).toBe(10_000);
  });

  it('needs a reason, a line that exists, and one change for each line', () => {
    const adjustments = [
      { lineKey: 'spreaderBar', quantity: 2, reason: ' ' },
      { lineKey: 'ladders', quantity: 2, reason: 'high wall' },
      { lineKey: 'spreaderBar', quantity: 3, reason: 'two docks' },
    ];
    expect(problemsOf(job({ adjustments }))).toEqual([
      { code: 'reason_missing', subject: 'spreaderBar' },
      { code: 'unknown_line', subject: 'ladders' },
      { code: 'line_adjusted_twice', subject: 'spreaderBar' },
    ]);
  });
});

describe('an added line', () => {
  const SLINGS: AddedLine = {
    key: 'slingsToBar',
    label: 'Slings from bar to panel',
    kind: 'sling',
    duty: 'lifting',
    quantity: 2,
    rating: { value: '1', unit: 't' },
    dimensions: [{ dimension: 'lengthM', rule: 'atLeast', value: '2' }],
    reason: 'bar has no hooks of its own',
  };

  it('comes last, with its reason and nothing from the method', () => {
    const last = linesOf(job({ added: [SLINGS] })).at(-1);
    expect(last).toMatchObject({
      key: 'slingsToBar',
      quantity: 2,
      rating: { measure: 'workingLoadLimit', value: '1000', unit: 'kg' },
      dimensions: [{ dimension: 'lengthM', rule: 'atLeast', value: '2', source: 'common-practice' }],
      adjusted: { reason: 'bar has no hooks of its own', methodQuantity: 0 },
    });
    expect(last?.workings).toHaveLength(1);
  });

  it.each<[string, Partial<AddedLine>]>([
    ['key_taken', { key: 'spreaderBar' }],
    ['unknown_kind', { kind: 'hook' }],
    ['duty_not_of_kind', { duty: 'lashing' }],
    ['reason_missing', { reason: '' }],
    ['quantity_out_of_range', { quantity: 0.5 }],
    ['rating_unreadable', { rating: { value: '1', unit: 'kN' } }],
  ])('is refused: %s', (code, change) => {
    const added = { ...SLINGS, ...change };
    expect(problemsOf(job({ added: [added] }))).toEqual([{ code, subject: added.key }]);
  });

  it('is refused without a rating where its kind is rated', () => {
    const { rating: _none, ...unrated } = SLINGS;
    expect(problemsOf(job({ added: [unrated] }))).toEqual([
      { code: 'rating_missing', subject: 'slingsToBar' },
    ]);
  });

  it('is refused under the key of another added one', () => {
    expect(problemsOf(job({ added: [SLINGS, SLINGS] }))).toEqual([
      { code: 'key_taken', subject: 'slingsToBar' },
    ]);
  });
});
