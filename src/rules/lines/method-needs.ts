import type { CalculationProblem } from '../calculations/calculation.js';
import type { JobParameter } from '../calculations/job-parameters.js';
import type { Lift } from '../calculations/lift.js';
import {
  LIFT_FIGURES,
  isLiftFigure,
  originOf,
  type FigureKey,
  type LiftFigure,
} from '../calculations/lift-figure.js';
import type { KindDefinition } from '../gear/kind.js';
import type { RulingPanels } from '../panels/panel-mass.js';
import { Exact } from '../quantities/exact.js';
import { needUnitOf } from '../quantities/measure-unit.js';
import type { Figure, Working } from '../working.js';
import type { Counted } from './job-counts.js';
import type { CountedBy, MethodLine } from './method.js';
import type { DimensionNeed, RatingNeed } from './need.js';

/** What a line's needs are worked out from. */
export interface JobFigures {
  readonly ruling: RulingPanels;
  readonly lift: Lift;
  readonly parameters: readonly JobParameter[];
  readonly counted: Counted;
}

const COUNT_NAMES: Readonly<Record<CountedBy, string>> = {
  crew: 'crews',
  lifterInUse: 'lifters in use',
  panelOnWheels: 'panels on wheels at one time',
  truckUnloading: 'trucks unloading at one time',
  personAloft: 'persons aloft',
  job: 'jobs',
};

/** How many items a line asks for. Spares are added once, but not to a line that comes to nothing. */
export function quantityOf(line: MethodLine, counted: Counted): { quantity: number; working: Working } {
  const base = counted[line.per] * line.quantityPer;
  const spares = base === 0 ? 0 : line.spares;
  const working: Working = {
    title: `${line.label}: quantity`,
    formula: `${COUNT_NAMES[line.per]} × items for each + spares`,
    inputs: [
      { name: COUNT_NAMES[line.per], value: String(counted[line.per]), unit: '' },
      { name: 'items for each', value: String(line.quantityPer), unit: '' },
      { name: 'spares', value: String(spares), unit: '' },
    ],
    result: { name: 'quantity', value: String(base + spares), unit: '' },
    source: line.source.key,
  };
  return { quantity: base + spares, working };
}

/**
 * The least rating of one item of the line, with its workings: what the line's basis names, exact and unrounded.
 * None for a line that is not rated, or whose figure is unsettled.
 */
export function ratingOf(
  line: MethodLine,
  kind: KindDefinition,
  figures: JobFigures,
): { rating: RatingNeed; workings: readonly Working[] } | undefined {
  if (!kind.rating || line.ratingBasis === 'none') return undefined;
  const basis =
    line.ratingBasis === 'personsPerCrew'
      ? personsPerCrew(figures.counted)
      : basisOf(line.ratingBasis, figures);
  if (!basis) return undefined;
  const { value, name, workings } = basis;
  const unit = needUnitOf(kind.rating.measure);
  const working: Working = {
    title: `${line.label}: rating of each`,
    formula: name,
    inputs: [{ name, value: value.toString(), unit }],
    result: { name: 'least rating', value: value.toString(), unit },
    source: line.source.key,
    ...(line.caution !== undefined && { caution: line.caution }),
  };
  return {
    rating: { measure: kind.rating.measure, value: value.toString(), unit },
    workings: [...workings, working],
  };
}

interface Basis {
  readonly value: Exact;
  readonly name: string;
  readonly workings: readonly Working[];
}

function basisOf(figure: LiftFigure, figures: JobFigures): Basis | undefined {
  const value = figureOf(figure, figures);
  return value && { value, name: LIFT_FIGURES[figure].name, workings: [] };
}

/** A figure of the job; undefined while it is unsettled. */
function figureOf(key: FigureKey, { ruling, lift, parameters }: JobFigures): Exact | undefined {
  if (key === 'heaviestPanelKg') return ruling.heaviest.massKg;
  if (key === 'heaviestPackedKg') return ruling.heaviestPacked.packedKg;
  if (isLiftFigure(key)) return lift.figures[key];
  const value = parameters.find((parameter) => parameter.key === key)?.value ?? null;
  return value === null ? undefined : Exact.of(value);
}

function personsPerCrew({ personAloft, crew }: Counted): Basis {
  const persons = Exact.of(personAloft).dividedBy(Exact.of(crew), { places: 0, rounding: 'up' });
  const count = (name: string, value: number): Figure => ({ name, value: String(value), unit: '' });
  const working: Working = {
    title: 'Persons aloft in one crew',
    formula: 'persons aloft / crews, rounded up',
    inputs: [count('persons aloft', personAloft), count('crews', crew)],
    result: { name: 'persons aloft in one crew', value: persons.toString(), unit: 'persons' },
    source: 'common-practice',
  };
  return { value: persons, name: 'persons aloft in one crew', workings: [working] };
}

/** The sizes that each item of the line must have, as far as they are settled. */
export function dimensionsOf(line: MethodLine, figures: JobFigures): readonly DimensionNeed[] {
  return line.fits.flatMap((fit) => {
    const value = 'value' in fit ? fit.value : figureOf(fit.figure, figures)?.toString();
    if (value === undefined) return [];
    return [{ dimension: fit.dimension, rule: fit.rule, value, source: fit.source.key }];
  });
}

/** Everything that keeps the line's needs from being worked out: the problems of the calculations it rests on. */
export function unsettledIn(
  { ratingBasis, fits, hosting }: MethodLine,
  { lift, parameters }: JobFigures,
): readonly CalculationProblem[] {
  const keys: FigureKey[] = fits.flatMap((fit) => ('figure' in fit ? [fit.figure] : []));
  if (ratingBasis !== 'none' && ratingBasis !== 'personsPerCrew') keys.push(ratingBasis);
  const calculations = new Set(keys.filter(isLiftFigure).map((key) => originOf(key).from));
  if (hosting) calculations.add('hosting');
  const unstated = parameters.filter(({ key, value }) => value === null && keys.includes(key));
  return [
    ...lift.sections
      .filter(({ calculation }) => calculations.has(calculation))
      .flatMap(({ problems }) => problems),
    ...unstated.map(({ key }) => ({ code: 'parameter_missing' as const, subject: key })),
  ];
}
