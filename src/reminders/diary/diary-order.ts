import { compareNaturally } from '../../rules/allocation/natural-order.js';
import type { DiaryEntry } from './diary-entry.js';

/** What cannot wait comes first: overdue and out on a job, then overdue, then by due day, and there by tag. */
export function inDiaryOrder(entries: readonly DiaryEntry[]): DiaryEntry[] {
  return entries
    .map((entry) => ({ entry, urgency: urgency(entry) }))
    .sort((a, b) => a.urgency - b.urgency || byDay(a.entry, b.entry))
    .map(({ entry }) => entry);
}

function byDay(a: DiaryEntry, b: DiaryEntry): number {
  if (a.dueOn !== b.dueOn) return a.dueOn < b.dueOn ? -1 : 1;
  return compareNaturally(a.tag, b.tag);
}

function urgency(entry: DiaryEntry): number {
  if (isOverdueOut(entry)) return 0;
  return entry.overdue ? 1 : 2;
}

/** Gear that may not be used and is on a job all the same. */
export function isOverdueOut({ overdue, jobs }: DiaryEntry): boolean {
  return overdue && jobs.some(({ out }) => out);
}
