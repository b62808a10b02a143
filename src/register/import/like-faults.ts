import type { Fault } from './finding.js';

/** The same fault of the same cell in one row or in many, to be said once. */
export interface LikeFaults {
  readonly fault: Fault;
  readonly rows: readonly number[];
}

/** Faults that read alike put together, in the order of their first rows; what concerns most rows comes first. */
export function likeFaults(faults: readonly Fault[]): LikeFaults[] {
  const groups = new Map<string, { fault: Fault; rows: number[] }>();
  for (const fault of faults) {
    const key = JSON.stringify([fault.code, fault.column, fault.cell, fault.subject, fault.rows]);
    const group = groups.get(key);
    if (group) group.rows.push(fault.row);
    else groups.set(key, { fault, rows: [fault.row] });
  }
  return [...groups.values()].sort((a, b) => b.rows.length - a.rows.length);
}

const MOST_RUNS = 10;

/** Row numbers as people write them: `5, 7–12, 40`; the end of a long list is counted. */
export function rowWords(rows: readonly number[]): string {
  const runs: { from: number; to: number }[] = [];
  for (const row of rows) {
    const last = runs.at(-1);
    if (last?.to === row - 1) last.to = row;
    else runs.push({ from: row, to: row });
  }
  const words = runs.slice(0, MOST_RUNS).map(({ from, to }) => (from === to ? `${from}` : `${from}–${to}`));
  const more = runs.slice(MOST_RUNS).reduce((sum, { from, to }) => sum + to - from + 1, 0);
  return more === 0 ? words.join(', ') : `${words.join(', ')} and ${more} more`;
}
