import type { FieldError } from '../problem.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { Exact } from '../rules/quantities/exact.js';
import type { Marking } from '../rules/quantities/marking.js';
import { toSi, type SiUnit } from '../rules/quantities/units.js';

/** The largest figures that are believed: beyond them someone slipped a digit or a unit. Common practice, no source. */
const MOST_RATING: Readonly<Partial<Record<SiUnit, string>>> = { kg: '500000', N: '5000000', persons: '100' };
const MOST_SIZE = { m: '1000', mm: '100000' } as const;

const DECIMAL = /^\d{1,12}(\.\d{1,9})?$/;

/** Whether each marking is one that the kind is rated by, in a unit it is stamped in, with a figure to be believed. */
export function checkMarkings(markings: readonly Marking[], kind: KindDefinition): FieldError[] {
  if (markings.length > 20) return [{ field: 'markings', message: 'write at most 20 markings' }];
  return markings.flatMap((marking, number) => checkMarking(marking, `markings[${number}]`, kind));
}

function checkMarking(marking: Marking, at: string, kind: KindDefinition): FieldError[] {
  const { rating } = kind;
  if (!rating)
    return [{ field: `${at}.measure`, message: `${kind.plural} carry no rating: leave the marking out` }];
  if (marking.measure !== rating.measure) {
    return [
      { field: `${at}.measure`, message: `${kind.plural} are rated by ${MEASURE_WORDS[rating.measure]}` },
    ];
  }
  if (!rating.units.includes(marking.unit)) {
    const message =
      `${kind.plural} are marked with ${MEASURE_WORDS[rating.measure]} in ${rating.units.join(', ')}; ` +
      `'${marking.unit}' is not a unit of it. Read the plate again`;
    return [{ field: `${at}.unit`, message }];
  }
  return checkRatingValue(marking, `${at}.value`);
}

function checkRatingValue({ value, unit }: Marking, field: string): FieldError[] {
  if (!DECIMAL.test(value))
    return [{ field, message: 'write the figure as a plain decimal number, as marked' }];
  const si = toSi(value, unit);
  if (si.value.isZero()) return [{ field, message: 'a rating is more than 0' }];
  const most = MOST_RATING[si.unit];
  if (most !== undefined && Exact.of(most).isLessThan(si.value)) {
    return [
      {
        field,
        message: `is more than ${most} ${si.unit}, which is not to be believed. Read the plate again`,
      },
    ];
  }
  if (si.unit === 'persons' && value.includes('.')) return [{ field, message: 'persons are counted whole' }];
  return [];
}

const MEASURE_WORDS: Readonly<Record<Marking['measure'], string>> = {
  workingLoadLimit: 'working load limit',
  lashingCapacity: 'lashing capacity',
  ratedCapacity: 'rated capacity',
  ratedPersons: 'rated persons',
};

/** Whether the kind knows each dimension, those it requires are there, and each is positive and to be believed. */
export function checkDimensions(
  dimensions: Readonly<Record<string, string>>,
  kind: KindDefinition,
): FieldError[] {
  const known = new Map(kind.dimensions.map((definition) => [definition.name, definition]));
  const errors: FieldError[] = [];
  for (const [name, value] of Object.entries(dimensions)) {
    const field = `dimensions.${name}`;
    const definition = known.get(name);
    if (!definition) errors.push({ field, message: `${kind.plural} are not measured by '${name}'` });
    else if (typeof value !== 'string' || !isSize(value, MOST_SIZE[definition.unit])) {
      const message = `write it in ${definition.unit}, more than 0 and at most ${MOST_SIZE[definition.unit]}`;
      errors.push({ field, message });
    }
  }
  for (const { name, label, required } of kind.dimensions) {
    if (required && dimensions[name] === undefined)
      errors.push({ field: `dimensions.${name}`, message: `write the ${label}` });
  }
  return errors;
}

function isSize(value: string, most: string): boolean {
  if (!DECIMAL.test(value)) return false;
  const size = Exact.of(value);
  return !size.isZero() && !Exact.of(most).isLessThan(size);
}
