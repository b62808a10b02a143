import type { KindDefinition } from '../../rules/gear/kind.js';
import { readUnit } from '../../rules/quantities/unit-words.js';
import type { UnitSymbol } from '../../rules/quantities/units.js';
import { FIELDS, type Field } from './fields.js';
import { HEADING_WORDS } from './heading-words.js';
import { plainWords } from './plain-words.js';

/** A heading taken apart: its words, and the unit of its column where it names one: 'Length (m)', 'Traglast in kg'. */
interface Heading {
  readonly words: string;
  readonly unit?: UnitSymbol;
}

const FIELD_OF_WORDS: ReadonlyMap<string, Field> = new Map(
  FIELDS.flatMap((field) =>
    (HEADING_WORDS.get(field) ?? []).map((words) => [plainWords(words), field] as const),
  ),
);

/** The unit that a heading names for the plain numbers below it. */
export function headingUnit(heading: string): UnitSymbol | undefined {
  return takeApart(heading).unit;
}

/** The field that a heading stands for, or undefined when nothing tells. */
export function guessField(heading: string, kinds: readonly KindDefinition[]): Field | undefined {
  const { words } = takeApart(heading);
  return FIELD_OF_WORDS.get(words) ?? sizes(kinds).get(words);
}

/** A guess for each heading. A field that two headings claim goes to the first, and the storeman looks over the rest. */
export function guessFields(headings: readonly string[], kinds: readonly KindDefinition[]): (Field | null)[] {
  const taken = new Set<Field>();
  return headings.map((heading) => {
    const field = guessField(heading, kinds);
    if (field === undefined || taken.has(field)) return null;
    taken.add(field);
    return field;
  });
}

/** The sizes that kinds have besides a length, by their label. */
function sizes(kinds: readonly KindDefinition[]): Map<string, Field> {
  const dimensions = kinds.flatMap((kind) => kind.dimensions).filter(({ name }) => name !== 'lengthM');
  return new Map(dimensions.map(({ name, label }) => [plainWords(label), `size.${name}` as const]));
}

/** What is longer is no heading. */
const LONGEST_HEADING = 100;

function takeApart(heading: string): Heading {
  if (heading.length > LONGEST_HEADING) return { words: '' };
  const match = /^(.*?)\s*(?:[([]\s*([^)\]]*?)\s*[)\]]|\s(?:in|en)\s+(\S+))\s*$/i.exec(heading);
  const reading = match ? readUnit(match[2] ?? match[3] ?? '') : undefined;
  if (!match) return { words: plainWords(heading) };
  if (reading?.ok) return { words: plainWords(match[1] ?? ''), unit: reading.unit };
  return { words: plainWords(match[2] === undefined ? heading : (match[1] ?? '')) };
}
