import { addDays, type Day } from '../../rules/calendar/day.js';
import { nearDay } from '../../web/sentences/due-reason.js';
import { isOverdueOut } from '../diary/diary-order.js';
import type { DiaryEntry } from '../diary/diary-entry.js';
import { isOldNews } from './overdue-sections.js';
import type { ToldEntry } from './told-entries.js';

/** What is due within so many days is named apart from what has time. */
const SOON_DAYS = 7;

/**
 * The gravest first, in figures, and last what was told before: '2 overdue out on a job, 5 due by 12 May, 9 still
 * overdue in store'. A single item is called by its tag.
 */
export function digestSubject(told: readonly ToldEntry[]): string {
  const entries = told.map(({ entry }) => entry);
  const inStore = told.filter(({ entry }) => entry.overdue && !isOverdueOut(entry));
  const known = inStore.filter(isOldNews);
  const others = inStore.filter((one) => !known.includes(one));
  const isNews = known.length > 0 && others.every(({ fresh }) => fresh);
  const named = entries.length === 1 ? entries[0]?.tag : undefined;
  const inWords = (counts: readonly Count[]) =>
    counts.map(({ number, what }) => `${named ?? number} ${what}`);
  return [
    ...inWords(counted(entries.filter(isOverdueOut).length, 'overdue out on a job')),
    ...inWords(counted(others.length, isNews ? 'newly overdue in store' : 'overdue in store')),
    ...inWords(dueParts(entries.filter(({ overdue }) => !overdue))),
    ...stakeParts(entries),
    ...inWords(counted(known.length, 'still overdue in store')),
  ].join(', ');
}

/** So many of what. */
interface Count {
  readonly number: number;
  readonly what: string;
}

function counted(number: number, what: string): Count[] {
  return number > 0 ? [{ number, what }] : [];
}

function dueParts(due: readonly DiaryEntry[]): Count[] {
  const soon = due.filter(({ dueOn, today }) => dueOn <= addDays(today, SOON_DAYS));
  const later = due.length - soon.length;
  if (soon.length === 0 || later === 0) return counted(due.length, `due by ${lastDay(due)}`);
  return [...counted(soon.length, `due by ${lastDay(soon)}`), ...counted(later, `more by ${lastDay(due)}`)];
}

function lastDay(due: readonly DiaryEntry[]): string {
  const [first] = due;
  if (!first) return '';
  const last = due.reduce<Day>((latest, { dueOn }) => (dueOn > latest ? dueOn : latest), first.dueOn);
  return nearDay(last, first.today);
}

/** The promised jobs that cannot go ahead unless something is done. */
function stakeParts(entries: readonly DiaryEntry[]): string[] {
  const jobs = entries.flatMap(({ stops }) => stops.filter(({ out }) => !out));
  const references = [...new Set(jobs.map(({ reference }) => reference))];
  if (references.length === 0) return [];
  return [references.length === 1 ? `job ${references[0]} at stake` : `${references.length} jobs at stake`];
}
