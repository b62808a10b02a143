import { identityKey, lookAlikeKey } from '../../rules/text/look-alike.js';
import type { FaultCode } from './finding.js';
import type { RowReading } from './read-row.js';

/** Rows of one file that stand in each other's way. */
export interface FileClash {
  readonly reading: RowReading;
  readonly code: Extract<FaultCode, 'duplicate_tag' | 'duplicate_serial' | 'serial_looks_alike'>;
  readonly field: 'tag' | 'serial';
  readonly rows: readonly number[];
}

/** Every row that shares a tag, a serial number of one maker, or the look of one, with other rows: none of them is taken for the right one. */
export function clashesInFile(readings: readonly RowReading[]): FileClash[] {
  const clashes: FileClash[] = [];
  for (const group of groupsBy(readings, tagKey)) {
    for (const reading of group)
      clashes.push({ reading, code: 'duplicate_tag', field: 'tag', rows: others(group, reading) });
  }
  for (const group of groupsBy(readings, looksKey)) {
    for (const reading of group) {
      const same = group.filter((other) => serialKey(other) === serialKey(reading));
      const alike = group.filter((other) => serialKey(other) !== serialKey(reading));
      const rows = others(same, reading);
      if (rows.length > 0) clashes.push({ reading, code: 'duplicate_serial', field: 'serial', rows });
      if (alike.length > 0)
        clashes.push({ reading, code: 'serial_looks_alike', field: 'serial', rows: others(alike, reading) });
    }
  }
  return clashes;
}

function groupsBy(
  readings: readonly RowReading[],
  keyOf: (reading: RowReading) => string | undefined,
): RowReading[][] {
  const groups = new Map<string, RowReading[]>();
  for (const reading of readings) {
    const key = keyOf(reading);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group) group.push(reading);
    else groups.set(key, [reading]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

function others(group: readonly RowReading[], reading: RowReading): number[] {
  return group.filter((other) => other !== reading).map(({ row }) => row.number);
}

function tagKey({ tag }: RowReading): string | undefined {
  return tag === undefined ? undefined : identityKey(tag);
}

function serialKey({ serial }: RowReading): string {
  return identityKey(serial ?? '');
}

function looksKey({ maker, serial }: RowReading): string | undefined {
  if (maker === undefined || serial === undefined) return undefined;
  return `${identityKey(maker)}\n${lookAlikeKey(serial)}`;
}
