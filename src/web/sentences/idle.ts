import type { IdleInspection } from '../../rules/due/idle.js';
import { count, day } from './words.js';

/** That gear has lain idle, since when, and what to do. */
export function idleSentence({ since, months }: IdleInspection): string {
  return `Neither out nor inspected since ${day(since)}: after ${count(months, 'month', 'months')} it is inspected before use.`;
}
