import { Injectable } from '@nestjs/common';
import { AsyncLocalStorage } from 'node:async_hooks';
import { Temporal } from 'temporal-polyfill';
import { toDay, type Day } from './rules/calendar/day.js';

/** The only place that reads the time. Rules never do: they are handed a day. */
@Injectable()
export class Clock {
  private readonly elsewhere = new AsyncLocalStorage<string>();

  /** This instant as ISO 8601 text in UTC with milliseconds, always 24 characters, so that it sorts as text. */
  now(): string {
    return this.elsewhere.getStore() ?? new Date().toISOString();
  }

  /** The calendar day it is now in a time zone of the IANA database, such as a store's. */
  today(timeZone: string): Day {
    return this.dayAt(this.now(), timeZone);
  }

  /** The calendar day of an instant, such as that of a record, in a time zone. */
  dayAt(instant: string, timeZone: string): Day {
    return toDay(Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString());
  }

  /** Runs a job as if it were that instant: the demo lives through its past this way, and tests through their days. */
  at<T>(instant: string, job: () => Promise<T>): Promise<T> {
    return this.elsewhere.run(new Date(instant).toISOString(), job);
  }
}
