import type { Calculated, LiftedPanel } from '../calculations/calculation.js';
import { greatest } from '../panels/greatest.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';

/** What a panel lifter must do. */
export interface LifterNeed {
  /** The working load limit that the lifter needs. */
  readonly lifterLoadKg: Exact;
  /** What its jaw must open and close to. */
  readonly thickestMm: Exact;
  readonly thinnestMm: Exact;
}

const NOUGHT = Exact.of('0');
const ONE = Exact.of('1');
const MM_PER_M = Exact.of('1000');

/**
 * The working load limit that a panel lifter needs, and the range of its jaw. The handling factor allows for a lift
 * that is not smooth; one under 1 is the problem `parameter_out_of_range`. Common practice, no source.
 * @throws RangeError when there is no panel, which a checked schedule rules out.
 */
export function lifter({
  panels,
  handlingFactor,
}: {
  readonly panels: readonly LiftedPanel[];
  readonly handlingFactor: Exact;
}): Calculated<LifterNeed> {
  if (handlingFactor.isLessThan(ONE)) {
    const has = handlingFactor.toString();
    return {
      ok: false,
      problems: [{ code: 'parameter_out_of_range', subject: 'handlingFactor', needed: '1', has }],
    };
  }
  const heaviest = greatest(panels, ({ massKg }) => massKg);
  const thickest = greatest(panels, ({ thicknessM }) => thicknessM);
  const thinnest = greatest(panels, ({ thicknessM }) => NOUGHT.minus(thicknessM));
  const lifterLoadKg = heaviest.massKg.times(handlingFactor).rounded({ places: 6, rounding: 'up' });
  return {
    ok: true,
    figures: {
      lifterLoadKg,
      thickestMm: thickest.thicknessM.times(MM_PER_M),
      thinnestMm: thinnest.thicknessM.times(MM_PER_M),
    },
    workings: [liftWorking(heaviest, handlingFactor, lifterLoadKg), ...jawWorkings(thickest, thinnest)],
  };
}

function liftWorking({ name, massKg }: LiftedPanel, handlingFactor: Exact, lifterLoadKg: Exact): Working {
  return {
    title: `Panel ${name}: heaviest lift`,
    formula: 'mass × handling factor',
    inputs: [
      { name: 'mass', value: massKg.toString(), unit: 'kg' },
      { name: 'handling factor', value: handlingFactor.toString(), unit: '' },
    ],
    result: { name: 'heaviest lift', value: lifterLoadKg.toString(), unit: 'kg' },
    source: 'common-practice',
    caution:
      'The panel is taken bare: packing left on counts as load. Strap the panel to the lifter before it leaves the ground.',
  };
}

function jawWorkings(thickest: LiftedPanel, thinnest: LiftedPanel): readonly Working[] {
  return [
    jawWorking(thickest, { formula: 'thickest panel', result: 'opening of the jaw, at least' }),
    jawWorking(thinnest, { formula: 'thinnest panel', result: 'smallest opening of the jaw, at most' }),
  ];
}

function jawWorking(
  { name, thicknessM }: LiftedPanel,
  { formula, result }: { formula: string; result: string },
): Working {
  const value = thicknessM.times(MM_PER_M).toString();
  return {
    title: `Panel ${name}: ${formula}`,
    formula,
    inputs: [{ name: formula, value, unit: 'mm' }],
    result: { name: result, value, unit: 'mm' },
    source: 'common-practice',
  };
}
