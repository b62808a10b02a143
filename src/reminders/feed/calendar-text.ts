import ical, { escape, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import { addDays } from '../../rules/calendar/day.js';
import type { FeedDay } from './feed-day.js';
import { feedDescription, feedSummary } from './feed-words.js';

/** How often a calendar should look again, in seconds: what falls due changes by the day, not by the minute. */
const LOOK_AGAIN_SECONDS = 4 * 3600;

/**
 * Properties that the library adds for single programs. Of those outside the standard two stay, which many read where
 * RFC 7986 is not known: the name, and how often to look again.
 */
const OF_ONE_PROGRAM = /^X-(?!WR-CALNAME:|PUBLISHED-TTL:).*\r\n/gm;

/** What a calendar is written with. */
export interface CalendarFrame {
  readonly name: string;
  /** The address of this server, without a slash at its end. */
  readonly address: string;
  readonly nameOf: (kind: string) => string;
}

/**
 * The events as a calendar program reads them (RFC 5545; REFRESH-INTERVAL and NAME by RFC 7986). All are whole days,
 * which have no time zone, and block nobody's time. One that is off stays, marked as cancelled.
 */
export function calendarText(days: readonly FeedDay[], { name, address, nameOf }: CalendarFrame): string {
  const calendar = ical({
    // The library escapes every text but this one.
    name: escape(name, false),
    prodId: '//Tackleroom//Due diary//EN',
    ttl: LOOK_AGAIN_SECONDS,
  });
  const { hostname } = new URL(address);
  for (const day of days) {
    const link = `${address}/diary?storeId=${day.store.id}`;
    calendar.createEvent({
      id: `${day.key}@${hostname}`,
      sequence: day.sequence,
      start: day.on,
      end: addDays(day.on, 1),
      allDay: true,
      summary: feedSummary(day),
      description: feedDescription(day, { nameOf, link }),
      url: link,
      status: day.entries.length === 0 ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
      transparency: ICalEventTransparency.TRANSPARENT,
      stamp: day.changedAt,
      lastModified: day.changedAt,
    });
  }
  // RFC 5545 section 3.1 ends every line; the library leaves the last one open.
  return `${calendar.toString()}\r\n`.replace(OF_ONE_PROGRAM, '');
}
