import type { Day } from '../calendar/day.js';
import { jobsAtStake, type VisitNeed, type VisitTerms } from './visit-need.js';
import { servesOn, visitWindow, type VisitWindow } from './visit-window.js';

/** One day on which somebody examines items at a store. */
export interface Visit {
  readonly storeId: number;
  /** Who has to come: a competent person when any of the items asks for one. */
  readonly who: 'inspector' | 'competentPerson';
  readonly on: Day;
  readonly itemIds: readonly number[];
  /** The promised jobs that can go ahead once this visit is done, all that they take being examined before they start. */
  readonly savesJobIds: readonly number[];
}

/** Visits in order of day and store, and what they do not reach. */
export interface Visits {
  readonly visits: readonly Visit[];
  /** Items out until they are due, or not back when they should be: to be fetched, or examined where they are. */
  readonly notAtStore: readonly number[];
}

/**
 * The fewest visits to each store that reach every item: the item that has to be done first decides the day, the
 * last that still serves it, and all that may be done on that day is done. Taking the earliest end first is optimal
 * for covering intervals by points (a textbook exercise on greedy algorithms; from memory).
 */
export function planVisits(needs: readonly VisitNeed[], terms: VisitTerms): Visits {
  const reached = needs.flatMap((need) => {
    const window = visitWindow(need, terms);
    return window === undefined ? [] : [{ need, window }];
  });
  const planned = visitsOf(reached);
  const dayOf = new Map(planned.flatMap(({ on, needs }) => needs.map(({ itemId }) => [itemId, on] as const)));
  const savedBy = savingVisits(needs, dayOf, terms.today);
  return {
    visits: planned.map(({ storeId, on, needs: served }) => ({
      storeId,
      who: served.some(({ who }) => who === 'competentPerson') ? 'competentPerson' : 'inspector',
      on,
      itemIds: served.map(({ itemId }) => itemId).sort((a, b) => a - b),
      savesJobIds: jobsSavedBy(served, savedBy),
    })),
    notAtStore: needs.map(({ itemId }) => itemId).filter((itemId) => !dayOf.has(itemId)),
  };
}

interface Reached {
  readonly need: VisitNeed;
  readonly window: VisitWindow;
}

interface PlannedVisit {
  readonly storeId: number;
  readonly on: Day;
  readonly needs: readonly VisitNeed[];
}

function visitsOf(reached: readonly Reached[]): PlannedVisit[] {
  const visits: { storeId: number; on: Day; needs: VisitNeed[] }[] = [];
  for (const { need, window } of [...reached].sort(byEnd)) {
    const latest = visits.findLast(({ storeId, on }) => storeId === need.storeId && servesOn(window, on));
    if (latest === undefined) visits.push({ storeId: need.storeId, on: window.last, needs: [need] });
    else latest.needs.push(need);
  }
  return visits;
}

/** Earliest end first; the items and stores of one day in the order of their numbers. */
function byEnd(a: Reached, b: Reached): number {
  if (a.window.last !== b.window.last) return a.window.last < b.window.last ? -1 : 1;
  return a.need.storeId - b.need.storeId || a.need.itemId - b.need.itemId;
}

/** Of each job that is saved, the item examined last: with it everything that the job takes is in date. */
function savingVisits(
  needs: readonly VisitNeed[],
  dayOf: ReadonlyMap<number, Day>,
  today: Day,
): ReadonlyMap<number, number> {
  const lastOf = new Map<number, { readonly itemId: number; readonly on: Day } | 'stopped'>();
  for (const need of needs)
    for (const { jobId, from } of jobsAtStake(need, today)) {
      const on = dayOf.get(need.itemId);
      const last = lastOf.get(jobId);
      if (on === undefined || on >= from) lastOf.set(jobId, 'stopped');
      else if (last === undefined || (last !== 'stopped' && last.on < on))
        lastOf.set(jobId, { itemId: need.itemId, on });
    }
  return new Map(
    [...lastOf].flatMap(([jobId, last]) => (last === 'stopped' ? [] : [[jobId, last.itemId] as const])),
  );
}

function jobsSavedBy(served: readonly VisitNeed[], savedBy: ReadonlyMap<number, number>): number[] {
  const itemIds = new Set(served.map(({ itemId }) => itemId));
  return [...savedBy]
    .filter(([, itemId]) => itemIds.has(itemId))
    .map(([jobId]) => jobId)
    .sort((a, b) => a - b);
}
