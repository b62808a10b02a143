import type { EntityManager } from 'typeorm';
import type { Day } from '../../rules/calendar/day.js';
import type { KindDefinition } from '../../rules/gear/kind.js';
import { checkRows, type CheckedRows } from './check-rows.js';
import { NEEDED_FIELDS, type Field } from './fields.js';
import { findHeadings } from './find-headings.js';
import type { Notice } from './finding.js';
import { guessFields } from './guess-fields.js';
import { PANEL_WORDS } from './heading-words.js';
import { plainMapping, type ImportMapping } from './mapping.js';
import { plainWords } from './plain-words.js';
import { readingContext, type ImportStore, type ReadingContext } from './reading-context.js';
import { sortRows, type SortedRows } from './sort-rows.js';
import type { Table } from './table.js';

/** The heading of the column that a file to mend has more; it is no part of the file. */
export const WRONG_HEADING = 'What is wrong';

/** The facts that a file is examined with. */
export interface ImportFacts {
  readonly kinds: readonly KindDefinition[];
  readonly stores: readonly ImportStore[];
  readonly today: Day;
}

/** Everything found in a file, read by one mapping against the register as it is. */
export interface Examination {
  readonly headings: readonly string[];
  readonly mapping: ImportMapping;
  /** Fields without which nothing can be taken, and which no column is said to hold. Then no row was checked. */
  readonly missing: readonly Field[];
  readonly conventions: Pick<ReadingContext, 'dateOrder' | 'decimalMark'>;
  readonly rows: CheckedRows;
  /** Rows below the headings that are no items: blank ones, sums, headings repeated. */
  readonly skipped: number;
  /** Rows that are, or should be, items. */
  readonly total: number;
}

/** The headings of a file as text, without the column that a file to mend has more. */
export function headingsOf(table: Table, kinds: readonly KindDefinition[]): string[] {
  const headings = findHeadings(table, kinds).cells.map(({ text }) => text);
  return headings.at(-1) === WRONG_HEADING ? headings.slice(0, -1) : headings;
}

/** The mapping that the headings suggest. */
export function guessMapping(headings: readonly string[], { kinds, stores }: ImportFacts): ImportMapping {
  const mapping = plainMapping(guessFields(headings, kinds));
  const [only, another] = stores;
  return mapping.columns.includes('store') || !only || another ? mapping : { ...mapping, storeId: only.id };
}

/** Reads a file by a mapping and checks every row. Writes nothing. */
export async function examineFile(
  manager: EntityManager,
  { table, mapping, facts }: { table: Table; mapping: ImportMapping; facts: ImportFacts },
): Promise<Examination> {
  const headings = headingsOf(table, facts.kinds);
  const sorted = sortRows(table, findHeadings(table, facts.kinds), mapping);
  const missing = NEEDED_FIELDS.filter((field) => !mapping.columns.includes(field));
  const context = readingContext({ ...facts, headings, rows: sorted.body, mapping });
  const rows = await checkRows(manager, missing.length > 0 ? [] : sorted.body, context);
  const faulty = [...rows.faulty, ...sorted.miscounted].sort(
    (one, other) => one.row.number - other.row.number,
  );
  const ofFile = fileNotices({ headings, mapping, table, sorted, taken: rows.sound.length });
  const notices = [...ofFile, ...kindNotices(sorted, context), ...rows.notices];
  return {
    headings,
    mapping,
    missing,
    conventions: { dateOrder: context.dateOrder, decimalMark: context.decimalMark },
    rows: { ...rows, faulty, notices },
    skipped: sorted.skipped,
    total: sorted.body.length + sorted.miscounted.length,
  };
}

function fileNotices(input: {
  readonly headings: readonly string[];
  readonly mapping: ImportMapping;
  readonly table: Table;
  readonly sorted: SortedRows;
  readonly taken: number;
}): Notice[] {
  const { headings, mapping, table, sorted, taken } = input;
  const notices: Notice[] = [];
  const panelWords = headings.filter((heading) =>
    PANEL_WORDS.includes(plainWords(heading.replace(/\(.*\)/, ''))),
  );
  if (panelWords.length >= 4) notices.push({ code: 'panel_schedule' });
  const [, ...others] = table.sheetNames ?? [];
  if (others.length > 0) notices.push({ code: 'other_sheets', subject: others.join(', ') });
  headings.forEach((heading, index) => {
    const isLeftOut = heading !== '' && (mapping.columns[index] ?? null) === null;
    if (isLeftOut) notices.push({ column: heading, code: 'column_left_out' });
  });
  if (taken > 0 && !mapping.reportsOnFile && mapping.columns.includes('lastExamined'))
    notices.push({ code: 'reports_not_on_file' });
  return [...notices, ...sorted.notices];
}

/** Each word of the file for a kind that is not the kind's own name: a bow shackle becomes a shackle like any other. */
function kindNotices({ body }: SortedRows, { mapping, headings, kindOfWords }: ReadingContext): Notice[] {
  const column = mapping.columns.indexOf('kind');
  const heading = headings[column];
  const words = new Map(
    body.map(({ cells }) => [plainWords(cells[column]?.text ?? ''), cells[column]?.text ?? '']),
  );
  return [...words].flatMap(([word, cell]): Notice[] => {
    const kind = kindOfWords.get(word);
    if (!kind || heading === undefined || word === plainWords(kind.name)) return [];
    return [{ column: heading, cell, code: 'kind_read_as', subject: kind.name.toLowerCase() }];
  });
}
