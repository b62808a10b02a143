import type { Day } from '../../rules/calendar/day.js';
import type { DiaryEntry } from '../diary/diary-entry.js';

/** What a feed needs to know of a store. */
export interface FeedStore {
  readonly id: number;
  readonly name: string;
  readonly timeZone: string;
}

/** One event of a feed: what falls due at a store on a day, or what of it is overdue today. */
export interface FeedDay {
  readonly store: FeedStore;
  /** Stays the same as long as the event is about the same thing. */
  readonly key: string;
  readonly kind: 'due' | 'overdue';
  readonly on: Day;
  /** The store's today. */
  readonly today: Day;
  /** In the order of the diary; none says that the event is off. */
  readonly entries: readonly DiaryEntry[];
  /** Goes up with every change (RFC 5545 section 3.8.7.4). */
  readonly sequence: number;
  /** ISO 8601 in UTC. */
  readonly changedAt: string;
}
