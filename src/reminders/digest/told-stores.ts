import { addDays, type Day } from '../../rules/calendar/day.js';
import type { DigestChoice } from '../../rules/reminders/digest-choice.js';
import { isDigestDay } from '../../rules/reminders/digest-time.js';
import type { WorkCalendar } from '../../rules/reminders/work-calendar.js';

/** How far a digest told of a store. */
export interface ToldStore {
  readonly storeId: number;
  /** The last of the store's days whose reminders were told. */
  readonly through: Day;
  /** Whether what is still to fall due was told as well, or only what is overdue. */
  readonly leads: boolean;
}

/** An earlier digest of a person that counts: it was sent, or there was nothing to say. */
export interface PastRun {
  readonly onDay: Day;
  /** The instant of its decision. */
  readonly decidedAt: string;
  readonly told: readonly ToldStore[];
}

/** The last day of a store whose reminders a person was told, and the instant at which that was decided. */
export interface Covered {
  readonly through: Day;
  readonly at: string;
}

/**
 * How far a person was told of a store all that this choice asks for, by those digests whose day counts; undefined
 * where nothing was told.
 */
export function covered(
  runs: readonly PastRun[],
  { storeId, digest }: { storeId: number; digest: DigestChoice },
  counts: (day: Day) => boolean = () => true,
): Covered | undefined {
  const days = runs.flatMap(({ decidedAt: at, told }) =>
    told
      .filter((store) => store.storeId === storeId && (store.leads || digest === 'overdueOnly'))
      .filter(({ through }) => counts(through))
      .map(({ through }) => ({ through, at })),
  );
  return days.reduce<Covered | undefined>(
    (last, day) => (last === undefined || day.through > last.through ? day : last),
    undefined,
  );
}

/**
 * Whether a digest of today tells of a store. One a week does on its day, or on the next day after it when the digest
 * of that day was never sent.
 */
export function tellsToday(
  digest: DigestChoice,
  {
    today,
    toldThrough,
    rule,
  }: {
    today: Day;
    /** The last day that needs no telling any more. */
    toldThrough: Day;
    rule: WorkCalendar;
  },
): boolean {
  const lastWeek = addDays(today, -DAYS_A_WEEK);
  const from = toldThrough > lastWeek ? toldThrough : lastWeek;
  for (let day = today; day > from; day = addDays(day, -1)) if (isDigestDay(digest, day, rule)) return true;
  return false;
}

const DAYS_A_WEEK = 7;
