import type { Working } from '../working.js';
import { Exact } from './exact.js';

/** What a unit measures. Only units of one dimension convert into each other. */
export type Dimension = 'mass' | 'force' | 'length' | 'persons' | 'arealMass';

/** The SI unit that each dimension is kept in (persons are counted). */
export type SiUnit = 'kg' | 'N' | 'm' | 'persons' | 'kg/m2';

interface UnitDefinition {
  readonly dimension: Dimension;
  /** One unit in the SI unit of its dimension, exact. */
  readonly factor: string;
  /** Where the exact factor is a quotient with endless decimals: `factor` is divided by this. */
  readonly per?: string;
}

/**
 * Every unit a marking or a schedule may be written in, with its exact factor: NIST SP 811 (2008) appendix B,
 * the 1959 yard and pound (1 lb = 0.453 592 37 kg, 1 ft = 0.3048 m) and standard gravity (9.806 65 m/s2).
 * There is no bare 'ton': short, long and metric tons differ by up to 12 %, so each has its own symbol.
 */
const UNITS = {
  kg: { dimension: 'mass', factor: '1' },
  g: { dimension: 'mass', factor: '0.001' },
  t: { dimension: 'mass', factor: '1000' },
  lb: { dimension: 'mass', factor: '0.45359237' },
  shortTon: { dimension: 'mass', factor: '907.18474' },
  longTon: { dimension: 'mass', factor: '1016.0469088' },
  N: { dimension: 'force', factor: '1' },
  daN: { dimension: 'force', factor: '10' },
  kN: { dimension: 'force', factor: '1000' },
  kgf: { dimension: 'force', factor: '9.80665' },
  lbf: { dimension: 'force', factor: '4.4482216152605' },
  kip: { dimension: 'force', factor: '4448.2216152605' },
  m: { dimension: 'length', factor: '1' },
  mm: { dimension: 'length', factor: '0.001' },
  cm: { dimension: 'length', factor: '0.01' },
  ft: { dimension: 'length', factor: '0.3048' },
  in: { dimension: 'length', factor: '0.0254' },
  persons: { dimension: 'persons', factor: '1' },
  'kg/m2': { dimension: 'arealMass', factor: '1' },
  'lb/ft2': { dimension: 'arealMass', factor: '0.45359237', per: '0.09290304' },
} as const satisfies Record<string, UnitDefinition>;

export type UnitSymbol = keyof typeof UNITS;

/** Every unit symbol, in the order of the table. */
export const UNIT_SYMBOLS: readonly UnitSymbol[] = Object.keys(UNITS).filter(isUnit);

const SI_UNITS = {
  mass: 'kg',
  force: 'N',
  length: 'm',
  persons: 'persons',
  arealMass: 'kg/m2',
} as const satisfies Record<Dimension, SiUnit>;

/** Decimals kept where a factor has no end, far beyond what any scale or tape can tell. */
const ENDLESS_PLACES = 15;

/** Standard gravity in m/s2, exact (NIST SP 811 appendix B.8, after the 3rd CGPM of 1901). */
const STANDARD_GRAVITY = '9.80665';

/** True for a symbol of the table, written exactly: 'KG' and 'ton' are none. */
export function isUnit(text: string): text is UnitSymbol {
  return Object.hasOwn(UNITS, text);
}

/** What the unit measures. */
export function dimensionOf(unit: UnitSymbol): Dimension {
  return UNITS[unit].dimension;
}

/**
 * Converts decimal text to the SI unit of its dimension. Exact for every unit but lb/ft2, whose endless decimals
 * are rounded up at the 15th place because an areal mass only ever feeds a need.
 * @throws RangeError when `value` is not decimal text, or `unit` is not of the table (a bare 'ton' is not).
 */
export function toSi(value: string, unit: string): { readonly value: Exact; readonly unit: SiUnit } {
  if (!isUnit(unit)) throw new RangeError(`'${unit}' is not a unit of the table`);
  const definition: UnitDefinition = UNITS[unit];
  const product = Exact.of(value).times(Exact.of(definition.factor));
  const si = SI_UNITS[definition.dimension];
  if (definition.per === undefined) return { value: product, unit: si };
  const quotient = product.dividedBy(Exact.of(definition.per), { places: ENDLESS_PLACES, rounding: 'up' });
  return { value: quotient, unit: si };
}

/**
 * Converts decimal text from one unit to another of the same dimension, kept to `places` decimals and rounded the
 * named way: down for a capacity, up for a need.
 * @throws RangeError when the dimensions differ (mass is not force), or a value or unit cannot be read.
 */
export function convert(
  value: string,
  from: string,
  to: string,
  precision: { readonly places: number; readonly rounding: 'up' | 'down' },
): Exact {
  if (!isUnit(from)) throw new RangeError(`'${from}' is not a unit of the table`);
  if (!isUnit(to)) throw new RangeError(`'${to}' is not a unit of the table`);
  const source: UnitDefinition = UNITS[from];
  const target: UnitDefinition = UNITS[to];
  if (source.dimension !== target.dimension) {
    throw new RangeError(`${from} measures ${source.dimension}, ${to} measures ${target.dimension}`);
  }
  const above = Exact.of(value)
    .times(Exact.of(source.factor))
    .times(Exact.of(target.per ?? '1'));
  const below = Exact.of(target.factor).times(Exact.of(source.per ?? '1'));
  return above.dividedBy(below, precision);
}

/**
 * The force in N that a mass in kg presses down with at standard gravity, exact, with the working that says so.
 * The only way a mass and a force ever meet.
 */
export function massAsForce(massKg: Exact): { readonly force: Exact; readonly working: Working } {
  const force = massKg.times(Exact.of(STANDARD_GRAVITY));
  const working: Working = {
    title: 'Mass as force',
    formula: 'F = m × g',
    inputs: [
      { name: 'm', value: massKg.toString(), unit: 'kg' },
      { name: 'g', value: STANDARD_GRAVITY, unit: 'm/s2' },
    ],
    result: { name: 'F', value: force.toString(), unit: 'N' },
    source: 'nist-sp811',
  };
  return { force, working };
}
