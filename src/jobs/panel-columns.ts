import { readUnit } from '../rules/quantities/unit-words.js';
import { dimensionOf, type Dimension, type UnitSymbol } from '../rules/quantities/units.js';

/** What a column of a panel schedule can hold. */
export type PanelColumn =
  | 'name'
  | 'heightMm'
  | 'widthMm'
  | 'thicknessMm'
  | 'massKg'
  | 'arealMassKgPerM2'
  | 'fittingsKg'
  | 'centreOffsetMm'
  | 'packingKg'
  | 'count';

/** A column as its heading reads. `unit` is taken for cells that name none. */
export interface ReadHeading {
  readonly column: PanelColumn;
  readonly unit?: UnitSymbol;
}

/** What each column measures; a name and a count have no unit. */
export const DIMENSION_OF_COLUMN: Readonly<Partial<Record<PanelColumn, Dimension>>> = {
  heightMm: 'length',
  widthMm: 'length',
  thicknessMm: 'length',
  massKg: 'mass',
  arealMassKgPerM2: 'arealMass',
  fittingsKg: 'mass',
  centreOffsetMm: 'length',
  packingKg: 'mass',
};

/**
 * The words that schedules head their columns with. A longer word wins: 'packing mass' is packing. A centre of gravity
 * must be said to be off the middle: 'CG height' is measured from the foot. Common practice, no source.
 */
const WORDS: Readonly<Record<PanelColumn, readonly string[]>> = {
  packingKg: ['packing', 'packaging', 'crate', 'stillage'],
  arealMassKgPerM2: ['areal mass', 'areal', 'mass per area', 'mass per m2', 'area weight', 'area mass'],
  fittingsKg: ['fittings', 'hardware', 'ironmongery'],
  centreOffsetMm: [
    'offset',
    'off centre',
    'off center',
    'off middle',
    'off the middle',
    'from the middle',
    'eccentricity',
  ],
  heightMm: ['height', 'length', 'long side', 'h', 'l'],
  widthMm: ['width', 'cover width', 'w', 'b'],
  thicknessMm: ['thickness', 'thk', 'depth', 't', 'd'],
  count: ['count', 'qty', 'quantity', 'pieces', 'pcs', 'number of', 'no off', 'off'],
  massKg: ['mass', 'weight', 'weighed'],
  name: ['panel', 'name', 'mark', 'type', 'ref', 'reference', 'id', 'item', 'position', 'pos'],
};

/**
 * What a heading stands for: 'Height (mm)', 'width [in]', 'Mass kg', or a bare unit such as 'kg/m2'. Undefined when it
 * is none of ours.
 */
export function readHeading(heading: string): ReadHeading | undefined {
  const { words, unit } = splitUnit(heading.trim());
  const column = columnOf(words, unit);
  return column && { column, ...(unit && { unit }) };
}

function columnOf(words: string, unit: UnitSymbol | undefined): PanelColumn | undefined {
  const dimension = unit && dimensionOf(unit);
  const named = COLUMNS.find((column) => WORDS[column].some((word) => holds(words, word)));
  if (dimension === 'arealMass' && named !== 'fittingsKg' && named !== 'packingKg') return 'arealMassKgPerM2';
  if (named === undefined && dimension === 'mass' && words === '') return 'massKg';
  const expected = named && DIMENSION_OF_COLUMN[named];
  return dimension !== undefined && expected !== dimension ? undefined : named;
}

const COLUMNS: readonly PanelColumn[] = [
  'packingKg',
  'fittingsKg',
  'centreOffsetMm',
  'arealMassKgPerM2',
  'heightMm',
  'widthMm',
  'thicknessMm',
  'count',
  'massKg',
  'name',
];

function holds(words: string, word: string): boolean {
  return ` ${words} `.includes(` ${word} `);
}

/** A unit in brackets, a bare unit, or a last word that is one. */
function splitUnit(heading: string): { words: string; unit?: UnitSymbol } {
  const parts = [/^(.*?)[([]([^)\]]+)[)\]]\s*$/, /^()(\S{2,})$/, /^(.*\S)[\s,_]+(\S+)$/];
  for (const shape of parts) {
    const [, words = '', written = ''] = shape.exec(heading) ?? [];
    const unit = unitOf(written);
    if (unit) return { words: plainWords(words), unit };
  }
  return { words: plainWords(heading) };
}

function unitOf(text: string): UnitSymbol | undefined {
  const reading = readUnit(text);
  return reading.ok ? reading.unit : undefined;
}

function plainWords(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
