import type { EntityManager } from 'typeorm';
import { clashesInFile } from './clashes-in-file.js';
import { compareWithRegister, type Standing, type WholeReading } from './compare-with-register.js';
import type { Field } from './fields.js';
import type { Fault, Notice } from './finding.js';
import { readRow, type RowEntry, type RowReading } from './read-row.js';
import type { ReadingContext } from './reading-context.js';
import { settleMakers } from './settle-makers.js';
import type { TableRow } from './table.js';

/** The rows of a file, each in one heap. */
export interface CheckedRows {
  readonly sound: readonly { readonly row: TableRow; readonly entry: RowEntry }[];
  readonly unchanged: readonly TableRow[];
  readonly faulty: readonly { readonly row: TableRow; readonly faults: readonly Fault[] }[];
  readonly notices: readonly Notice[];
}

/** Checks every row by itself, against the other rows, and against the register as it is now. Writes nothing. */
export async function checkRows(
  manager: EntityManager,
  rows: readonly TableRow[],
  context: ReadingContext,
): Promise<CheckedRows> {
  const heading = headingOf(context, 'maker');
  const readings = settleMakers(
    rows.map((row) => readRow(row, context)),
    heading,
  );
  const standings = await standingsOf(manager, readings);
  const faultsOf = gatherFaults(readings, standings, context);
  const heaps: {
    sound: CheckedRows['sound'][number][];
    unchanged: TableRow[];
    faulty: CheckedRows['faulty'][number][];
  } = {
    sound: [],
    unchanged: [],
    faulty: [],
  };
  for (const reading of readings) {
    const faults = faultsOf.get(reading) ?? [];
    if (faults.length > 0) heaps.faulty.push({ row: reading.row, faults });
    else if (standings.get(reading)?.is === 'unchanged') heaps.unchanged.push(reading.row);
    else if (reading.entry) heaps.sound.push({ row: reading.row, entry: reading.entry });
  }
  return { ...heaps, notices: readings.flatMap(({ notices }) => notices) };
}

async function standingsOf(
  manager: EntityManager,
  readings: readonly RowReading[],
): Promise<Map<RowReading, Standing>> {
  const whole = readings.filter((reading): reading is WholeReading => reading.entry !== undefined);
  const standings = await compareWithRegister(manager, whole);
  return new Map(
    whole.flatMap((reading, index) => {
      const standing = standings[index];
      return standing ? [[reading, standing] as const] : [];
    }),
  );
}

function gatherFaults(
  readings: readonly RowReading[],
  standings: ReadonlyMap<RowReading, Standing>,
  context: ReadingContext,
): Map<RowReading, Fault[]> {
  const faultsOf = new Map(readings.map((reading) => [reading, [...reading.faults]]));
  for (const { reading, code, field, rows } of clashesInFile(readings)) {
    // Two items that look alike and are both in the register as the file says: someone has said that they are two.
    if (code === 'serial_looks_alike' && standings.get(reading)?.is === 'unchanged') continue;
    faultsOf.get(reading)?.push({ ...place(reading, field, context), code, rows });
  }
  for (const [reading, standing] of standings) {
    faultsOf.get(reading)?.push(...registerFaults(reading, standing, context));
  }
  return faultsOf;
}

/** What the register says against a row. */
function registerFaults(reading: RowReading, standing: Standing, context: ReadingContext): Fault[] {
  if (standing.is === 'unchanged') return [];
  const clash = clashFault(reading, standing, context);
  return [
    ...(reading.entry?.outOfService
      ? [{ ...place(reading, 'condition', context), code: 'not_in_service' as const }]
      : []),
    ...(clash ? [clash] : []),
  ];
}

function clashFault(reading: RowReading, standing: Standing, context: ReadingContext): Fault | undefined {
  if (standing.is === 'different') {
    return { ...place(reading, 'tag', context), code: 'tag_in_register', subject: standing.field };
  }
  if (standing.is !== 'clashing') return undefined;
  const code = standing.clash.code === 'serial_taken' ? 'serial_in_register' : 'looks_like_register';
  return { ...place(reading, 'serial', context), code, subject: standing.clash.other.tag };
}

function place(reading: RowReading, field: Field, context: ReadingContext) {
  const column = headingOf(context, field);
  const cell = reading.row.cells[context.mapping.columns.indexOf(field)]?.text ?? '';
  return { row: reading.row.number, cell, ...(column === undefined ? {} : { column }) };
}

function headingOf(context: ReadingContext, field: Field): string | undefined {
  return context.headings[context.mapping.columns.indexOf(field)];
}
