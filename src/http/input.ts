import { plainToInstance } from 'class-transformer';
import { validate, type ValidationError } from 'class-validator';
import { Problem, type FieldError } from '../problem.js';

/**
 * Checks a body against its DTO. Unknown fields are refused: a misspelt field must not be dropped in silence.
 * @throws Problem `bad_input` that names every wrong field.
 */
export async function readInput<T extends object>(type: new () => T, body: unknown): Promise<T> {
  const fields = body ?? {};
  if (typeof fields !== 'object' || Array.isArray(fields)) {
    throw badInput([{ field: 'request', message: 'send an object of fields' }]);
  }
  const input = plainToInstance(type, fields);
  const errors = await validate(input, {
    whitelist: true,
    forbidNonWhitelisted: true,
    forbidUnknownValues: true,
  });
  if (errors.length > 0) throw badInput(flatten(errors));
  return input;
}

/** The problem that names the fields and what each should be. */
export function badInput(errors: readonly FieldError[]): Problem {
  return new Problem('bad_input', errors.map(({ field, message }) => `${field}: ${message}`).join('; '), {
    errors,
  });
}

/**
 * A form as a DTO can read it: blank fields are left out, and names such as `panels[0].name` or `roles[]`
 * become nested values. Names that start with `_` are the page's own and are left out. A browser sends line breaks as
 * CR LF: they become LF, so that words that were only shown again are still the same text.
 */
export function readForm(fields: unknown): Record<string, unknown> {
  const result: Record<string, unknown> = {};
  if (typeof fields !== 'object' || fields === null) return result;
  for (const [name, value] of Object.entries(fields)) {
    if (!name.startsWith('_') && value !== '')
      place(result, name, typeof value === 'string' ? value.trim().replaceAll('\r\n', '\n') : value);
  }
  return result;
}

function place(target: Record<string, unknown>, name: string, value: unknown): void {
  const [, list, index, field] = /^(\w+)\[(\d{0,3})\](?:\.(\w+))?$/.exec(name) ?? [];
  if (list === undefined) target[name] = value;
  else if (field === undefined) target[list] = Array.isArray(value) ? value : [value];
  else placeInList(target, { list, index: Number(index), field, value });
}

function placeInList(
  target: Record<string, unknown>,
  { list, index, field, value }: { list: string; index: number; field: string; value: unknown },
): void {
  const entries = (target[list] ??= []);
  if (!Array.isArray(entries)) return;
  const entry: unknown = (entries[index] ??= {});
  if (typeof entry === 'object' && entry !== null) Reflect.set(entry, field, value);
}

function flatten(errors: readonly ValidationError[], path = ''): FieldError[] {
  return errors.flatMap((error) => {
    const field = /^\d+$/.test(error.property)
      ? `${path}[${error.property}]`
      : path
        ? `${path}.${error.property}`
        : error.property;
    const own = Object.values(error.constraints ?? {}).map((message) => ({
      field,
      message: readable(message),
    }));
    return [...own, ...flatten(error.children ?? [], field)];
  });
}

function readable(message: string): string {
  return message.startsWith('property ') ? 'is not a field of this request; check its spelling' : message;
}
