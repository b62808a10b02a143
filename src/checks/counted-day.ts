import { Temporal } from 'temporal-polyfill';
import { toDay, type Day } from '../rules/calendar/day.js';

/** How far ahead of ours the clock of a device may run. */
const MOST_AHEAD_MINUTES = 10;

/** How long a check may wait on a device without a network before its clock is in doubt. */
const MOST_WAIT_HOURS = 36;

/** The day that a check belongs to, and whether it counts for it. */
export interface CountedDay {
  /** The day of the check, or of its receipt where the clock is in doubt. */
  readonly day: Day;
  /** The moment of the check by the clock of the device, in UTC with milliseconds. */
  readonly checkedAt: string;
  /** True when the clock of the device cannot be right: nobody knows the day, and the check counts for none. */
  readonly clockDoubtful: boolean;
}

/**
 * The day at the store that a check belongs to. A scheme asks for a check in each shift; no scheme says when shifts
 * begin, so that the calendar day is taken as the shift. A device that runs a little ahead is taken at the moment of
 * receipt: no check is of tomorrow. Where the clock is in doubt the check is filed under the day of receipt and counts
 * for no day. The zone that the device believes to be in does not matter.
 */
export function countedDay(
  checkedAt: string,
  { receivedAt, timeZone }: { receivedAt: string; timeZone: string },
): CountedDay {
  const [checked, received] = [Temporal.Instant.from(checkedAt), Temporal.Instant.from(receivedAt)];
  const waited = received.epochMilliseconds - checked.epochMilliseconds;
  const clockDoubtful = waited < -MOST_AHEAD_MINUTES * 60_000 || waited > MOST_WAIT_HOURS * 3_600_000;
  const counts = clockDoubtful || waited < 0 ? received : checked;
  return {
    day: toDay(counts.toZonedDateTimeISO(timeZone).toPlainDate().toString()),
    checkedAt: checked.round({ smallestUnit: 'millisecond', roundingMode: 'floor' }).toString({
      fractionalSecondDigits: 3,
    }),
    clockDoubtful,
  };
}
