import { identityKey } from '../../rules/text/look-alike.js';
import type { Notice } from './finding.js';
import type { RowReading } from './read-row.js';

/** Writes each maker as most rows of the file do, with a notice on the rows that differ: 'norfell' is Norfell. */
export function settleMakers(readings: readonly RowReading[], heading: string | undefined): RowReading[] {
  const spellings = commonSpellings(readings);
  return readings.map((reading) => {
    const { maker, entry } = reading;
    const spelling = maker === undefined ? undefined : spellings.get(identityKey(maker));
    if (!entry || maker === undefined || spelling === undefined || spelling === maker) return reading;
    const column = heading === undefined ? {} : { column: heading };
    const notice: Notice = {
      row: reading.row.number,
      ...column,
      cell: maker,
      code: 'maker_spelling',
      subject: spelling,
    };
    const input = { ...entry.input, maker: spelling };
    return { ...reading, maker: spelling, entry: { ...entry, input }, notices: [...reading.notices, notice] };
  });
}

/** The most common spelling of each maker; of two that are equally common, the first in the file. */
function commonSpellings(readings: readonly RowReading[]): Map<string, string> {
  const counts = new Map<string, Map<string, number>>();
  for (const { maker } of readings) {
    if (maker === undefined) continue;
    const key = identityKey(maker);
    const spellings = counts.get(key) ?? new Map<string, number>();
    spellings.set(maker, (spellings.get(maker) ?? 0) + 1);
    counts.set(key, spellings);
  }
  return new Map(
    [...counts].map(([key, spellings]) => {
      const [best] = [...spellings].reduce((first, next) => (next[1] > first[1] ? next : first));
      return [key, best];
    }),
  );
}
