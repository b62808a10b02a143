import type { FieldError } from '../problem.js';
import { badInput } from './input.js';
import { turnsWriting } from './plain-text.js';

/** Deeper than anything that Tackleroom is sent; reading what is nested without end would exhaust the stack. */
const DEEPEST = 8;

/** What every object inherits: a field of such a name would be taken for the object's own workings. */
const INHERITED: ReadonlySet<string> = new Set(Object.getOwnPropertyNames(Object.prototype));

/** The parts of a name such as `panels[0].name`. */
const NAME_MARKS = /[.[\]]+/;

/**
 * Stands before everything that reads a body or a query.
 * @throws Problem `bad_input` of text that no database keeps (NUL, halves of characters) or that reads otherwise than it is, of names that every object
 * inherits, of lists in lists, and of what is nested too deeply.
 */
export function refuseUnsafeInput({ body, query }: { body: unknown; query: unknown }): void {
  const errors = [...faultsIn(query, '', 0), ...faultsIn(body, '', 0)];
  if (errors.length > 0) throw badInput(errors.slice(0, 20));
}

function faultsIn(value: unknown, field: string, depth: number): FieldError[] {
  if (typeof value === 'string')
    return isKeepable(value)
      ? []
      : [fault(field, 'holds a control character, which is not seen: type it anew')];
  if (typeof value !== 'object' || value === null || Buffer.isBuffer(value)) return [];
  if (depth === DEEPEST) return [fault(field, 'is nested too deeply')];
  if (Array.isArray(value)) {
    if (value.some((entry) => Array.isArray(entry))) return [fault(field, 'holds a list in a list')];
    return value.flatMap((entry, index) => faultsIn(entry, `${field}[${index}]`, depth + 1));
  }
  return Object.entries(value).flatMap(([name, entry]) => {
    const path = field ? `${field}.${name}` : name;
    const isSafe = isKeepable(name) && !name.split(NAME_MARKS).some((part) => INHERITED.has(part));
    return isSafe
      ? faultsIn(entry, path, depth + 1)
      : [fault(field, 'has a field whose name is not allowed')];
  });
}

function fault(field: string, message: string): FieldError {
  return { field: field || 'request', message };
}

/** PostgreSQL keeps no NUL, and UTF-8 no half of a character. */
function isKeepable(text: string): boolean {
  return !/[\0\p{Cs}]/u.test(text) && !turnsWriting(text);
}
