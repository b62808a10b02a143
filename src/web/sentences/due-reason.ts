import type { DueReason } from '../../reminders/diary/diary-entry.js';
import { daysBetween, type Day } from '../../rules/calendar/day.js';
import { EVENT_NAMES, INSPECTION_NAMES, count, day, shortDay } from './words.js';

/** What makes an item due, in a sentence: 'Its interim inspection is due by 12 May, in 7 days.' */
export function dueSentence(reason: DueReason, today: Day): string {
  switch (reason.why) {
    case 'inspection':
      return `Its ${INSPECTION_NAMES[reason.type]} ${dueWords(reason.dueOn, today)}.`;
    case 'neverExamined':
      return `It never had its ${INSPECTION_NAMES[reason.type]}.`;
    case 'event':
      return `It was ${eventName(reason.event)} on ${nearDay(reason.dueOn, today)} and needs a fresh ${INSPECTION_NAMES[reason.type]}.`;
    case 'liftsUsed':
      return `It has made all the lifts it may make before its next ${INSPECTION_NAMES[reason.type]}.`;
    case 'defectDeadline':
      return `A defect ${reason.dueOn < today ? 'allowed' : 'allows'} use until ${nearDay(reason.dueOn, today)} only.`;
    case 'failed':
      return `It failed its ${INSPECTION_NAMES[reason.type]} on ${nearDay(reason.dueOn, today)}.`;
  }
}

/** A day near enough to need no year, or with its year: `3 May`, `3 May 2025`. */
export function nearDay(value: Day, today: Day): string {
  return Math.abs(daysBetween(today, value)) <= MOST_DAYS_WITHOUT_YEAR ? shortDay(value) : day(value);
}

/** Within half a year a day of a month can be meant once only. */
const MOST_DAYS_WITHOUT_YEAR = 182;

function dueWords(dueOn: Day, today: Day): string {
  const days = daysBetween(today, dueOn);
  if (days < 0)
    return `was due on ${nearDay(dueOn, today)}, ${days === -1 ? 'yesterday' : `${-days} days ago`}`;
  if (days === 0) return 'is due today';
  return `is due by ${nearDay(dueOn, today)}, ${days === 1 ? 'tomorrow' : `in ${count(days, 'day', 'days')}`}`;
}

function eventName(event: string): string {
  return Object.entries(EVENT_NAMES).find(([name]) => name === event)?.[1] ?? event;
}
