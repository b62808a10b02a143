import ICAL from 'ical.js';
import { expect } from 'vitest';

/** An event as an independent reader of calendars (npm ical.js) understands it. */
export interface ReadEvent {
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly status: string;
  readonly sequence: number;
  readonly start: string;
  readonly end: string;
  readonly isDate: boolean;
  readonly stamp: string;
  readonly modified: string;
  readonly url: string;
  readonly transparency: string;
}

/** The events of a calendar by their UID, read by ical.js. */
export function readCalendar(text: string): Map<string, ReadEvent> {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  const events = calendar.getAllSubcomponents('vevent').map((component): ReadEvent => {
    const event = new ICAL.Event(component);
    const value = (name: string) => String(component.getFirstPropertyValue(name));
    return {
      uid: event.uid,
      summary: event.summary,
      description: event.description,
      status: value('status'),
      sequence: event.sequence,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      isDate: event.startDate.isDate && event.endDate.isDate,
      stamp: value('dtstamp'),
      modified: value('last-modified'),
      url: value('url'),
      transparency: value('transp'),
    };
  });
  // RFC 5545 section 3.8.4.7: a UID is globally unique, so no two events of a calendar share one.
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
  return new Map(events.map((event) => [event.uid, event]));
}

/** What RFC 5545 asks of the text itself, line by line, without a reader that forgives. */
export function expectSoundText(text: string): void {
  // Section 3.1: lines end with CRLF, the last one too, and neither stands alone.
  expect(text.endsWith('\r\n')).toBe(true);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  const lines = text.split('\r\n').slice(0, -1);
  for (const line of lines) {
    // Section 3.1: no line is longer than 75 octets, without its end; and no character of UTF-8 is cut in two.
    expect(Buffer.byteLength(line, 'utf8'), line).toBeLessThanOrEqual(75);
    expect(line).not.toContain('\ufffd');
  }
  const unfolded = text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);
  for (const line of unfolded) {
    // Section 3.1: a name, parameters, a colon and a value. Section 3.3.11: no control characters in text.
    expect(line).toMatch(/^[A-Z-]+(;[A-Z-]+=[^:;]+)*:[^\p{Cc}]*$/u);
    const [name = '', value = ''] = [line.split(/[:;]/)[0], line.slice(line.indexOf(':') + 1)];
    // Section 3.3.11: in text a comma, a semicolon and a backslash are escaped, and nothing else is.
    if (['SUMMARY', 'DESCRIPTION', 'NAME', 'X-WR-CALNAME'].includes(name))
      expect(value.replaceAll(/\\[\\;,nN]/g, '')).not.toMatch(/[\\;,]/);
  }
  // Section 3.4 and 3.6: one calendar object with its version and maker; section 3.6.1: what an event must have.
  expect(unfolded.slice(0, 2)).toEqual(['BEGIN:VCALENDAR', 'VERSION:2.0']);
  expect(unfolded.filter((line) => line.startsWith('PRODID:'))).toHaveLength(1);
  expect(unfolded.at(-1)).toBe('END:VCALENDAR');
  const events = unfolded.filter((line) => line === 'BEGIN:VEVENT').length;
  for (const name of ['UID:', 'DTSTAMP:', 'DTSTART;VALUE=DATE:', 'DTEND;VALUE=DATE:', 'SEQUENCE:'])
    expect(unfolded.filter((line) => line.startsWith(name))).toHaveLength(events);
  // Section 3.2.19: a time zone that is named would have to be described; whole days and UTC name none.
  expect(text).not.toMatch(/TZID|VTIMEZONE/);
}
