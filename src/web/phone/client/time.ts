/** A format takes long to make on a small phone, and a list asks for the day of every item. */
const formats = new Map<string | undefined, Intl.DateTimeFormat>();

/** The calendar day of an instant in a time zone: that of this phone where none is named. */
export function dayOf(instant: string | number, timeZone?: string): string {
  const parts = new Map(
    formatIn(timeZone)
      .formatToParts(new Date(instant))
      .map(({ type, value }) => [type, value]),
  );
  return `${parts.get('year')}-${parts.get('month')}-${parts.get('day')}`;
}

/** The time of day of an instant on this phone, such as `14:03`. */
export function timeOf(instant: string | number): string {
  const at = new Date(instant);
  return [at.getHours(), at.getMinutes()].map((part) => String(part).padStart(2, '0')).join(':');
}

/** The time of day, and the day where it is not today: `14:03`, `14:03 on 2026-05-03`. */
export function whenOf(instant: string | number): string {
  const day = dayOf(instant);
  return day === dayOf(Date.now()) ? timeOf(instant) : `${timeOf(instant)} on ${day}`;
}

function formatIn(timeZone: string | undefined): Intl.DateTimeFormat {
  const known = formats.get(timeZone);
  if (known) return known;
  const format = new Intl.DateTimeFormat('en', {
    ...(timeZone ? { timeZone } : {}),
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  formats.set(timeZone, format);
  return format;
}
