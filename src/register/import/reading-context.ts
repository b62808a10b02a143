import type { Day } from '../../rules/calendar/day.js';
import type { SchemeDefinition } from '../../rules/due/scheme.js';
import type { KindDefinition } from '../../rules/gear/kind.js';
import type { DecimalMark } from '../../rules/quantities/read-number.js';
import { detectDecimalMark } from '../../rules/quantities/read-number.js';
import type { Field } from './fields.js';
import type { ImportMapping } from './mapping.js';
import { plainWords } from './plain-words.js';
import { detectDateOrder, type DateOrder } from './read-date.js';
import type { TableRow } from './table.js';

/** A store as the import needs it. */
export interface ImportStore {
  readonly id: number;
  readonly name: string;
  readonly scheme: SchemeDefinition;
  readonly today: Day;
}

/** Everything that a row is read by. */
export interface ReadingContext {
  readonly headings: readonly string[];
  readonly mapping: ImportMapping;
  readonly kindOfWords: ReadonlyMap<string, KindDefinition>;
  readonly kindNames: readonly string[];
  readonly storeOfWords: ReadonlyMap<string, ImportStore>;
  readonly store: ImportStore | undefined;
  /** For rows whose store is not known: the latest day it is anywhere. */
  readonly latestToday: Day;
  readonly dateOrder: DateOrder;
  readonly decimalMark: DecimalMark;
}

const DATE_FIELDS: readonly Field[] = [
  'lastExamined',
  'manufacturedOn',
  'firstUsedOn',
  'hiredFrom',
  'hiredTo',
];

/** What the file, the storeman, the catalogue and the stores say together. What the storeman says goes first. */
export function readingContext(input: {
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
  readonly mapping: ImportMapping;
  readonly kinds: readonly KindDefinition[];
  readonly stores: readonly ImportStore[];
  readonly today: Day;
}): ReadingContext {
  const { headings, rows, mapping, kinds, stores, today } = input;
  const written = (isWanted: (field: Field) => boolean) => textsOf(rows, mapping, isWanted);
  return {
    headings,
    mapping,
    kindOfWords: kindWords(kinds, mapping),
    kindNames: kinds.flatMap(({ name, alsoCalled }) => [name, ...alsoCalled]),
    storeOfWords: storeWords(stores, mapping),
    store: stores.find(({ id }) => id === mapping.storeId),
    latestToday: stores.reduce((latest, store) => (store.today > latest ? store.today : latest), today),
    dateOrder:
      mapping.dateOrder === 'unknown'
        ? detectDateOrder(written((field) => DATE_FIELDS.includes(field)))
        : mapping.dateOrder,
    decimalMark:
      mapping.decimalMark === 'unknown' ? detectDecimalMark(written(isQuantity)) : mapping.decimalMark,
  };
}

function isQuantity(field: Field): boolean {
  return field === 'rating' || field === 'length' || field.startsWith('size.');
}

function textsOf(
  rows: readonly TableRow[],
  mapping: ImportMapping,
  isWanted: (field: Field) => boolean,
): string[] {
  const columns = mapping.columns.flatMap((field, index) =>
    field !== null && isWanted(field) ? [index] : [],
  );
  return rows.flatMap(({ cells }) =>
    columns.flatMap((column) => {
      const cell = cells[column];
      return cell?.is === 'text' ? [cell.text] : [];
    }),
  );
}

function kindWords(kinds: readonly KindDefinition[], mapping: ImportMapping): Map<string, KindDefinition> {
  const words = new Map<string, KindDefinition>();
  for (const kind of kinds) {
    for (const word of [kind.kind, kind.name, kind.plural, ...kind.alsoCalled])
      words.set(plainWords(word), kind);
  }
  for (const [word, meant] of Object.entries(mapping.kinds)) {
    const kind = kinds.find((candidate) => candidate.kind === meant);
    if (kind) words.set(word, kind);
  }
  return words;
}

function storeWords(stores: readonly ImportStore[], mapping: ImportMapping): Map<string, ImportStore> {
  const words = new Map(stores.map((store) => [plainWords(store.name), store]));
  for (const [word, id] of Object.entries(mapping.stores)) {
    const store = stores.find((candidate) => candidate.id === id);
    if (store) words.set(word, store);
  }
  return words;
}
