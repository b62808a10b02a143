import type { KindDefinition } from '../gear/kind.js';
import type { RulingPanels } from '../panels/panel-mass.js';
import { Exact } from '../quantities/exact.js';
import { needUnitOf } from '../quantities/measure-unit.js';
import { massAsForce } from '../quantities/units.js';
import type { Figure, Working } from '../working.js';
import type { Counted } from './job-counts.js';
import type { CountedBy, FitRequirement, MethodLine } from './method.js';
import type { DimensionNeed, RatingNeed } from './need.js';

/** What a line's needs are worked out from. */
export interface JobFigures {
  readonly ruling: RulingPanels;
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
 * The least rating of one item of the line, with its workings: the share of what the line's basis names, exact and
 * unrounded, persons rounded up to whole ones. None for a line that is not rated.
 */
export function ratingOf(
  line: MethodLine,
  kind: KindDefinition,
  figures: JobFigures,
): { rating: RatingNeed; workings: readonly Working[] } | undefined {
  if (!kind.rating || line.ratingBasis === 'none') return undefined;
  const { whole, name, workings } = basisOf(line.ratingBasis, figures);
  const unit = needUnitOf(kind.rating.measure);
  const shared = whole.times(Exact.of(line.share));
  const value = unit === 'persons' ? shared.rounded({ places: 0, rounding: 'up' }) : shared;
  const share: Working = {
    title: `${line.label}: rating of each`,
    formula: `${name} × share`,
    inputs: [
      { name, value: whole.toString(), unit },
      { name: 'share', value: line.share, unit: '' },
    ],
    result: { name: 'least rating', value: value.toString(), unit },
    source: line.source.key,
    ...(line.caution !== undefined && { caution: line.caution }),
  };
  return {
    rating: { measure: kind.rating.measure, value: value.toString(), unit },
    workings: [...workings, share],
  };
}

interface Basis {
  readonly whole: Exact;
  readonly name: string;
  readonly workings: readonly Working[];
}

function basisOf(basis: Exclude<MethodLine['ratingBasis'], 'none'>, { ruling, counted }: JobFigures): Basis {
  switch (basis) {
    case 'heaviestPanel':
      return { whole: ruling.heaviest.massKg, name: 'mass of the heaviest panel', workings: [] };
    case 'heaviestPackedPanel':
      return {
        whole: ruling.heaviestPacked.packedKg,
        name: 'packed mass of the heaviest packed panel',
        workings: [],
      };
    case 'panelWeightAsForce': {
      const { force, working } = massAsForce(ruling.heaviest.massKg);
      return { whole: force, name: 'weight of the heaviest panel', workings: [working] };
    }
    case 'personsPerCrew':
      return personsPerCrew(counted);
  }
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
  return { whole: persons, name: 'persons aloft in one crew', workings: [working] };
}

/** The dimensions each item of the line must have. */
export function dimensionsOf(line: MethodLine, { ruling }: JobFigures): readonly DimensionNeed[] {
  return line.fits.map((fit) => ({
    dimension: fit.dimension,
    ...limitOf(fit, ruling),
    source: fit.source.key,
  }));
}

function limitOf(fit: FitRequirement, ruling: RulingPanels): Pick<DimensionNeed, 'rule' | 'value'> {
  if ('equals' in fit) return { rule: 'equals', value: fit.equals };
  if ('atLeast' in fit) return { rule: 'atLeast', value: fit.atLeast };
  return { rule: 'atLeast', value: ruling.thickest.thicknessMm.toString() };
}
