import { EVENT_NAMES, INSPECTION_NAMES, day, shortDay } from '../../web/sentences/words.js';
import type { DiaryEntry, DiaryJob, DueReason } from './diary-entry.js';

/** Who may do what is due, at the head of a sentence. */
export const WHO_NAMES: Readonly<Record<DiaryEntry['who'], string>> = {
  inspector: 'An inspector',
  competentPerson: 'A competent person',
};

/** All that makes an item due, each once: two rules that ask the same by the same day are one thing to do. */
export function reasonsWords(reasons: readonly DueReason[]): string {
  return [...new Set(reasons.map(reasonWords))].join('; ');
}

/** What makes an item due, and when: `thorough examination, due 3 May 2026`. */
function reasonWords(reason: DueReason): string {
  switch (reason.why) {
    case 'inspection':
      return `${INSPECTION_NAMES[reason.type]}, due ${day(reason.dueOn)}`;
    case 'neverExamined':
      return `${INSPECTION_NAMES[reason.type]} before use (never examined)`;
    case 'event':
      return `${INSPECTION_NAMES[reason.type]} before use (${EVENT_NAMES[reason.event]}, ${day(reason.dueOn)})`;
    case 'liftsUsed':
      return `${INSPECTION_NAMES[reason.type]} before use (lifts used up, ${day(reason.dueOn)})`;
    case 'defectDeadline':
      return `a defect: not to be used after ${day(reason.dueOn)}`;
    case 'failed':
      return `failed its ${INSPECTION_NAMES[reason.type]} on ${day(reason.dueOn)}`;
  }
}

/** Where the item is: its store, or the job it is out on. */
export function whereWords({ storeName, today, jobs }: DiaryEntry): string {
  const away = jobs.find(({ out }) => out);
  if (away === undefined) return storeName;
  const back = away.to < today ? `due back ${shortDay(away.to)}, late` : `until ${shortDay(away.to)}`;
  return `out on ${away.reference}, ${back}`;
}

/** What to do so that a job is not stopped by the item. */
export function stopWords({ overdue, dueOn, today }: DiaryEntry, { from, out }: DiaryJob): string {
  if (out)
    return overdue ? 'out on it now: exchange it today' : `out past its day: exchange it by ${day(dueOn)}`;
  if (from <= today) return 'promised to it now: have it examined first, or take another';
  return `from ${day(from)}: have it examined before, or take another`;
}
