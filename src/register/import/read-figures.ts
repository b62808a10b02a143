import type { KindDefinition } from '../../rules/gear/kind.js';
import type { Marking } from '../../rules/quantities/marking.js';
import { DIMENSION_OF_MEASURE } from '../../rules/quantities/measure-unit.js';
import { parseQuantity, type QuantityReading } from '../../rules/quantities/parse-quantity.js';
import { convert, dimensionOf, type Dimension, type UnitSymbol } from '../../rules/quantities/units.js';
import type { Field } from './fields.js';
import type { FaultCode } from './finding.js';
import { headingUnit } from './guess-fields.js';
import type { RowReader } from './row-reader.js';

/** Decimals of a converted size: a foot in metres has four, an inch in millimetres one. */
const SIZE_PLACES = 9;

/** A quantity that could be read. */
type Quantity = Extract<QuantityReading, { ok: true }>;

/** Room for some markings with their conditions; what is longer is a note. */
const LONGEST_RATING = 500;

/** A condition in brackets after the figure: '500 kg (per side)'. What names the measure is no condition. */
const CONDITION = /^(.*\S)\s*\((?!(?:LC|WLL|SWL)\))([^()]+)\)$/i;

/** The markings of the rating cell: several stand between semicolons. Everything unreadable is a fault. */
export function readMarkings(reader: RowReader, kind: KindDefinition): Marking[] {
  const { rating } = kind;
  const text = reader.text('rating');
  if (!rating) {
    if (text !== undefined) reader.notice('rating', 'rating_not_kept', { subject: kind.name.toLowerCase() });
    return [];
  }
  if (text === undefined) {
    const isFormula = reader.cell('rating').is === 'formula';
    if (rating.required && !isFormula) reader.fault('rating', 'blank_cell');
    return [];
  }
  const parts = text.length > LONGEST_RATING ? [text] : text.split(';');
  return parts.flatMap((part) => readMarking(reader, rating, part.trim()) ?? []);
}

function readMarking(
  reader: RowReader,
  rating: NonNullable<KindDefinition['rating']>,
  text: string,
): Marking | undefined {
  const [, figure = text, condition] = (text.length > LONGEST_RATING ? null : CONDITION.exec(text)) ?? [];
  const read = readQuantity(reader, 'rating', figure, DIMENSION_OF_MEASURE[rating.measure]);
  if (!read) return undefined;
  const reading = asForce(reader, read, rating);
  if (!rating.units.includes(reading.unit))
    return reader.fault('rating', 'wrong_unit', { subject: rating.units.join(', ') });
  const isOther = reading.measureHint === 'lashingCapacity' || rating.measure === 'lashingCapacity';
  if (reading.measureHint !== undefined && isOther && reading.measureHint !== rating.measure) {
    return reader.fault('rating', 'wrong_measure', { subject: rating.measure });
  }
  const { value, unit } = reading;
  return { measure: rating.measure, value, unit, ...(condition === undefined ? {} : { condition }) };
}

/**
 * A lashing capacity that the label states in tonnes or kilograms is a force all the same, that many kilograms-force.
 * It is taken so only where the cell itself says LC: a bare mass on a strap may be anything.
 */
function asForce(
  reader: RowReader,
  reading: Quantity,
  { measure, units }: NonNullable<KindDefinition['rating']>,
): Quantity {
  const saysSo = measure === 'lashingCapacity' && reading.measureHint === measure;
  if (!saysSo || dimensionOf(reading.unit) !== 'mass' || !units.includes('kgf')) return reading;
  const value = convert(reading.value, reading.unit, 'kg', {
    places: SIZE_PLACES,
    rounding: 'down',
  }).toString();
  reader.notice('rating', 'mass_read_as_force', { subject: `${value} kgf` });
  return { ...reading, value, unit: 'kgf' };
}

/** The sizes of the row that the kind has, in the unit of their names. */
export function readSizes(reader: RowReader, kind: KindDefinition): Record<string, string> {
  const sizes: Record<string, string> = {};
  const hasLength = kind.dimensions.some(({ name }) => name === 'lengthM');
  if (!hasLength && reader.text('length') !== undefined) {
    reader.notice('length', 'length_not_kept', { subject: kind.name.toLowerCase() });
  }
  for (const { name, unit } of kind.dimensions) {
    const size = readSize(reader, name === 'lengthM' ? 'length' : `size.${name}`, unit);
    if (size !== undefined) sizes[name] = size;
  }
  return sizes;
}

function readSize(reader: RowReader, field: Field, unit: 'm' | 'mm'): string | undefined {
  const text = reader.text(field);
  const reading = text === undefined ? undefined : readQuantity(reader, field, text, 'length');
  if (!reading) return undefined;
  if (dimensionOf(reading.unit) !== 'length')
    return reader.fault(field, 'wrong_unit', { subject: 'm, mm, cm, ft or in' });
  const size = convert(reading.value, reading.unit, unit, {
    places: SIZE_PLACES,
    rounding: 'down',
  }).toString();
  if (reading.unit === 'ft' || reading.unit === 'in') {
    reader.notice(field, 'length_converted', { subject: `${size} ${unit}` });
  }
  return size;
}

/** Reads a quantity, or notes why it cannot be read. A blank is nothing, and no fault. */
function readQuantity(
  reader: RowReader,
  field: Field,
  text: string,
  dimension: Dimension,
): Quantity | undefined {
  const ofColumn = unitOfColumn(reader, field, dimension);
  const defaultUnit = ofColumn ?? unitSaid(reader, dimension);
  const decimalMark = reader.cell(field).is === 'number' ? 'point' : reader.context.decimalMark;
  const reading = parseQuantity(text, { decimalMark, ...(defaultUnit === undefined ? {} : { defaultUnit }) });
  if (reading.ok) {
    if (reading.assumedUnit && ofColumn === undefined)
      reader.notice(field, 'unit_assumed', { subject: reading.unit });
    return reading;
  }
  return reading.reason === 'blank' ? undefined : reader.fault(field, faultOf(reading));
}

/** The unit that the heading states, where it is one of what the column holds. */
function unitOfColumn(reader: RowReader, field: Field, dimension: Dimension): UnitSymbol | undefined {
  const unit = headingUnit(reader.heading(field) ?? '');
  return unit !== undefined && dimensionOf(unit) === dimension ? unit : undefined;
}

/** A figure with nothing behind it lacks its unit; letters behind it are a unit that nobody knows. */
function faultOf({ reason, part = '' }: Extract<QuantityReading, { ok: false }>): FaultCode {
  if (reason === 'blank') return 'blank_cell';
  return reason === 'unknown_unit' && !/\p{L}/u.test(part) ? 'unit_missing' : reason;
}

function unitSaid({ context: { mapping } }: RowReader, dimension: Dimension): UnitSymbol | undefined {
  if (dimension === 'mass') return mapping.massUnit ?? undefined;
  if (dimension === 'force') return mapping.forceUnit ?? undefined;
  if (dimension === 'length') return mapping.lengthUnit ?? undefined;
  return dimension === 'persons' ? 'persons' : undefined;
}
