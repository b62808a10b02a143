import type { DiaryEntry, DueReason } from '../diary/diary-entry.js';
import { count, day, EVENT_NAMES, INSPECTION_NAMES, listed } from '../../web/sentences/words.js';
import type { FeedDay } from './feed-day.js';

/** So many items are named in an event; of more, the diary has the list. */
export const MOST_NAMED = 20;

const MOST_JOBS = 3;

/** The title of an event: '3 items fall due, Quayside (stops job LM-2047)'. */
export function feedSummary({ kind, entries, store, on, today }: FeedDay): string {
  if (entries.length === 0)
    return `${kind === 'due' ? 'Nothing falls due any more' : 'Nothing is overdue any more'}, ${store.name}`;
  const stops = [...new Set(entries.flatMap((entry) => entry.stops.map(({ reference }) => reference)))];
  return `${count(entries.length, 'item', 'items')} ${verb(entries.length, { kind, isPast: on < today })}, ${store.name}${stopWords(stops)}`;
}

/** The text of an event: each item with what is due, and where to read more. No words that are wrong tomorrow. */
export function feedDescription(
  { entries }: FeedDay,
  { nameOf, link }: { nameOf: (kind: string) => string; link: string },
): string {
  const named = entries
    .slice(0, MOST_NAMED)
    .map((entry) => `${entry.tag} (${nameOf(entry.kind)}): ${dueWords(entry)}${entryJobs(entry)}`);
  const more = entries.length - named.length;
  const lines =
    more > 0 ? [...named, `and ${count(more, 'more item', 'more items')}: see the due diary`] : named;
  return [...lines, link].join('\n');
}

function verb(items: number, { kind, isPast }: { kind: FeedDay['kind']; isPast: boolean }): string {
  if (kind === 'overdue') return 'overdue';
  if (isPast) return items === 1 ? 'was due and still is' : 'were due and still are';
  return items === 1 ? 'falls due' : 'fall due';
}

function stopWords(references: readonly string[]): string {
  if (references.length === 0) return '';
  const more = references.length - MOST_JOBS;
  const shown = [...references.slice(0, MOST_JOBS), ...(more > 0 ? [count(more, 'other', 'others')] : [])];
  return ` (stops ${references.length === 1 ? 'job' : 'jobs'} ${listed(shown)})`;
}

function entryJobs({ stops }: DiaryEntry): string {
  return stopWords(stops.map(({ reference }) => reference));
}

function dueWords({ reasons }: DiaryEntry): string {
  return [...new Set(reasons.map(reasonWords))].join('; ');
}

function reasonWords(reason: DueReason): string {
  switch (reason.why) {
    case 'inspection':
      return `${INSPECTION_NAMES[reason.type]} due by ${day(reason.dueOn)}`;
    case 'neverExamined':
      return `never had its ${INSPECTION_NAMES[reason.type]}`;
    case 'event':
      return `${eventWords(reason.event)} on ${day(reason.dueOn)}, needs a fresh ${INSPECTION_NAMES[reason.type]}`;
    case 'liftsUsed':
      return `has made the lifts allowed before its next ${INSPECTION_NAMES[reason.type]}`;
    case 'defectDeadline':
      return `a defect allows use until ${day(reason.dueOn)} only`;
    case 'failed':
      return `failed its ${INSPECTION_NAMES[reason.type]} on ${day(reason.dueOn)}`;
  }
}

function eventWords(event: string): string {
  return Object.entries(EVENT_NAMES).find(([name]) => name === event)?.[1] ?? event;
}
