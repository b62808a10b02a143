/** The boxes of one name that are ticked in a form, as numbers where they are; the check of the field says the rest. */
export function formNumbers(value: unknown): unknown[] {
  const list: unknown[] = Array.isArray(value) ? value : value === undefined ? [] : [value];
  return list.map((entry) => (typeof entry === 'string' && /^\d{1,10}$/.test(entry) ? Number(entry) : entry));
}
