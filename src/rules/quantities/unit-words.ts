import { UNIT_SYMBOLS, type UnitSymbol } from './units.js';

/** The ways stores write each unit, in lower case without spaces or full stops. */
const WORDS: Readonly<Record<UnitSymbol, readonly string[]>> = {
  kg: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramm'],
  g: ['g', 'gram', 'grams', 'gramm'],
  t: ['t', 'te', 'tonne', 'tonnes', 'tonnen', 'metricton', 'metrictons', 'metrictonne', 'metrictonnes'],
  lb: ['lb', 'lbs', 'pound', 'pounds'],
  shortTon: ['shortton', 'shorttons', 'uston', 'ustons'],
  longTon: ['longton', 'longtons', 'ukton', 'uktons', 'imperialton', 'imperialtons'],
  N: ['n', 'newton', 'newtons'],
  daN: ['dan', 'decanewton', 'decanewtons'],
  kN: ['kn', 'kilonewton', 'kilonewtons'],
  kgf: ['kgf', 'kp'],
  lbf: ['lbf'],
  kip: ['kip', 'kips'],
  m: ['m', 'mtr', 'mtrs', 'metre', 'metres', 'meter', 'meters'],
  mm: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  ft: ['ft', 'foot', 'feet'],
  in: ['in', 'inch', 'inches'],
  persons: ['persons', 'person', 'people', 'pers', 'personen'],
  'kg/m2': ['kg/m2', 'kg/m²', 'kg/m^2', 'kg/sqm'],
  'lb/ft2': ['lb/ft2', 'lb/ft²', 'lb/ft^2', 'lbs/ft2', 'lbs/ft²', 'psf', 'lb/sqft'],
};

const SYMBOL_OF: ReadonlyMap<string, UnitSymbol> = new Map(
  UNIT_SYMBOLS.flatMap((unit) => WORDS[unit].map((word) => [word, unit] as const)),
);

/** Words that mean 1 000 kg to one store, 907 kg to another and 1 016 kg to a third. */
const AMBIGUOUS_TONS = new Set(['ton', 'tons']);

export type UnitReading =
  | { readonly ok: true; readonly unit: UnitSymbol }
  | { readonly ok: false; readonly reason: 'ambiguous_ton' | 'unknown_unit' };

/**
 * Reads a unit as a storeman writes it: 'KG', 'lbs.', 'US ton'. A bare 'ton' is refused, and so is a capital 'T':
 * stamped on tackle it stands for tonnes in one country and for short tons in another. The small 't' is the tonne.
 */
export function readUnit(text: string): UnitReading {
  const written = text.replace(/[\s.]+/g, '');
  const word = written.toLowerCase();
  if (written === 'T' || AMBIGUOUS_TONS.has(word)) return { ok: false, reason: 'ambiguous_ton' };
  const unit = SYMBOL_OF.get(word);
  return unit === undefined ? { ok: false, reason: 'unknown_unit' } : { ok: true, unit };
}
