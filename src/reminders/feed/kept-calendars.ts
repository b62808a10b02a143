/** A calendar as it is sent. */
export interface CalendarFile {
  readonly text: string;
  /** Its fingerprint: the same as long as not a letter changes (RFC 9110 section 8.8.3). */
  readonly etag: string;
}

/** So many calendars are kept: those of 10,000 items take half a megabyte each. */
const MOST_KEPT = 40;

/**
 * The calendars that were read last. Programs look every few hours, day and night, and mostly nothing has happened
 * since: then a calendar need not be written again.
 */
export class KeptCalendars {
  private readonly kept = new Map<string, { readonly state: string; readonly file: CalendarFile }>();

  /** The calendar of a feed, if it was kept in this very state. */
  find(feed: string, state: string | undefined): CalendarFile | undefined {
    const found = this.kept.get(feed);
    return found !== undefined && found.state === state ? found.file : undefined;
  }

  /** Keeps the calendar of a feed, and forgets the one kept longest when there are too many. */
  keep(feed: string, state: string, file: CalendarFile): void {
    this.kept.delete(feed);
    this.kept.set(feed, { state, file });
    const [longest] = this.kept.keys();
    if (this.kept.size > MOST_KEPT && longest !== undefined) this.kept.delete(longest);
  }
}
