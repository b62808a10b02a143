import { addDays, addMonths, type Day } from '../../rules/calendar/day.js';
import { MONTHS_PLANNED, MOST_DAYS_EARLY } from '../../rules/reminders/visit-need.js';
import { planVisits, type Visit } from '../../rules/reminders/visits.js';
import type { DiaryEntry } from '../diary/diary-entry.js';
import type { StoreToday } from './telling-stores.js';
import { daysAhead } from './told-entries.js';

/** A visit with the references of the jobs that it saves. */
export interface StoreVisit extends Visit {
  readonly saves: readonly string[];
}

/** The visits to each store that clear what falls due there, by the number of the store: those of its diary. */
export function storeVisits(
  entries: readonly DiaryEntry[],
  stores: Iterable<StoreToday>,
): ReadonlyMap<number, readonly StoreVisit[]> {
  return new Map([...stores].map((store) => [store.storeId, visitsTo(store, entries)]));
}

/**
 * The last due day that visits to a store are planned by. A visit is as the diary has it only if it is planned by all
 * that the diary knows: gear that falls due later, but leaves on a long job before, moves it to an earlier day.
 */
export function plannedThrough({ today, rule }: Pick<StoreToday, 'today' | 'rule'>): Day {
  const [told, listed] = [addDays(today, daysAhead(rule, today)), addMonths(today, MONTHS_PLANNED)];
  return addDays(told > listed ? told : listed, MOST_DAYS_EARLY);
}

function visitsTo(store: StoreToday, entries: readonly DiaryEntry[]): StoreVisit[] {
  const { storeId, today, rule } = store;
  const through = plannedThrough(store);
  const needs = entries.filter((entry) => entry.storeId === storeId && entry.dueOn <= through);
  const references = new Map(
    needs.flatMap(({ jobs }) => jobs.map(({ jobId, reference }) => [jobId, reference] as const)),
  );
  const { visits } = planVisits(needs, { today, calendarOf: () => rule, mostDaysEarly: MOST_DAYS_EARLY });
  return visits.map((visit) => ({
    ...visit,
    saves: visit.savesJobIds.flatMap((jobId) => references.get(jobId) ?? []),
  }));
}
