import { isPlain } from '../http/plain-text.js';
import type { FieldError } from '../problem.js';
import { isDay, type Day } from '../rules/calendar/day.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { identityKey, lookAlikeKey } from '../rules/text/look-alike.js';
import { checkDimensions, checkMarkings } from './check-figures.js';
import { checkHire } from './check-hire.js';
import { checkLoadChart } from './check-load-chart.js';
import { checkWrittenSchemes } from './check-written-schemes.js';
import type { ItemInput } from './item-input.js';

/** What an entry is checked against. `kind` is undefined when the catalogue does not know it. */
export interface CheckContext {
  readonly kind: KindDefinition | undefined;
  /** Today in the item's store. */
  readonly today: Day;
  /** The scheme of the item's store; without it, a lengthened interval is not looked for. */
  readonly scheme?: SchemeDefinition;
}

/** Everything wrong with an entry that can be told without the register: whether it is taken is `findClashes`. */
export function checkItem(input: ItemInput, context: CheckContext): FieldError[] {
  const { kind } = context;
  return [
    ...checkTexts(input),
    ...checkSerial(input),
    ...(kind
      ? [
          ...checkMarkings(input.markings ?? [], kind),
          ...checkDimensions(input.dimensions ?? {}, kind),
          ...checkLoadChart(input.loadChart, kind),
        ]
      : [{ field: 'kind', message: `'${input.kind}' is not a kind of gear that Tackleroom knows` }]),
    ...checkDays(input, context.today),
    ...checkHire(input),
    ...checkWrittenSchemes(input, context),
  ];
}

const LONGEST_BATCH = 60;

function checkTexts({ tag, maker, batch, notes }: ItemInput): FieldError[] {
  return [
    ...checkMark('tag', tag, { most: 40, what: "the company's own mark on the item" }),
    ...checkMark('maker', maker, { most: 80, what: 'the maker as the plate names it' }),
    ...(batch === undefined
      ? []
      : checkMark('batch', batch, { most: LONGEST_BATCH, what: "the maker's batch or lot" })),
    ...((notes ?? '').length > 1000 ? [{ field: 'notes', message: 'write at most 1000 characters' }] : []),
  ];
}

function checkSerial({ serial, serialUnknown }: ItemInput): FieldError[] {
  if (serialUnknown) {
    if ((serial ?? '').trim() === '') return [];
    return [{ field: 'serial', message: 'leave the serial number blank, or do not say that it is unknown' }];
  }
  if (serial === undefined) {
    return [{ field: 'serial', message: 'write the serial number, or say that the plate cannot be read' }];
  }
  return checkMark('serial', serial, { most: 60, what: 'the serial number as the plate shows it' });
}

/** A mark needs a letter or a digit to be told apart by; its keys can be longer than itself (½ becomes 1/2). */
function checkMark(
  field: string,
  text: string,
  { most, what }: { most: number; what: string },
): FieldError[] {
  if (lookAlikeKey(text) === '') return [{ field, message: `write ${what}` }];
  if (!isPlain(text, { lines: false }))
    return [{ field, message: 'write it on one line, without control characters' }];
  const longest = Math.max(text.trim().length, identityKey(text).length, lookAlikeKey(text).length);
  return longest > most ? [{ field, message: `write at most ${most} characters` }] : [];
}

function checkDays(input: ItemInput, today: Day): FieldError[] {
  const errors: FieldError[] = [];
  for (const field of ['manufacturedOn', 'firstUsedOn', 'declarationOn'] as const) {
    const day = input[field];
    if (day === undefined) continue;
    if (!isDay(day)) errors.push({ field, message: 'write a day that exists as YYYY-MM-DD' });
    else if (day > today) errors.push({ field, message: `is in the future: today is ${today} at the store` });
  }
  const { manufacturedOn, firstUsedOn } = input;
  if (errors.length === 0 && manufacturedOn && firstUsedOn && firstUsedOn < manufacturedOn) {
    errors.push({ field: 'firstUsedOn', message: `is before the day of manufacture, ${manufacturedOn}` });
  }
  return errors;
}
