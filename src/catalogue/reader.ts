import { isDay, toDay, type Day } from '../rules/calendar/day.js';
import type { Problems } from './problems.js';

const STAND_IN_DAY = toDay('1900-01-01');
/** The value of a place whose absence has been noted already: reading it notes nothing more. */
const NOTED = Symbol('noted');

/**
 * A cursor on one value of a config file. Each `read` method gives the value in its type; where the value is wrong it
 * notes the problem and gives a stand-in, so that reading goes on and every problem is found. Nothing read may be used
 * before `Problems.throwIfAny` has passed.
 */
export class Reader {
  private constructor(
    private readonly problems: Problems,
    private readonly file: string,
    private readonly value: unknown,
    private readonly path: string,
  ) {}

  /** The cursor at the top of a file; `undefined` stands for a file whose problem has been noted already. */
  static of(problems: Problems, file: string, value: unknown): Reader {
    return new Reader(problems, file, value === undefined ? NOTED : value, '');
  }

  /** Notes a problem at this place. */
  refuse(reason: string, advice: string): void {
    if (this.value === NOTED) return;
    this.problems.add({ file: this.file, path: this.path || 'whole file', reason, advice });
  }

  /** How many problems are noted so far: checks between values are left out where reading one of them noted any. */
  noted(): number {
    return this.problems.found.length;
  }

  /** Whether this is an object that has the key. */
  has(key: string): boolean {
    return isObject(this.value) && Object.hasOwn(this.value, key);
  }

  isNull(): boolean {
    return this.value === null;
  }

  /** The cursor at a key that `expectKeys` has vouched for. */
  at(key: string): Reader {
    return this.child(
      this.path ? `${this.path}.${key}` : key,
      isObject(this.value) ? this.value[key] : undefined,
    );
  }

  /** Notes every key that is missing, and every key that neither list names. */
  expectKeys(required: readonly string[], optional: readonly string[] = []): this {
    const known = [...required, ...optional];
    const found = this.keys();
    for (const key of found) {
      if (!known.includes(key)) this.at(key).refuse('unknown key', `write one of: ${known.join(', ')}`);
    }
    const missing = isObject(this.value) ? required.filter((key) => !found.includes(key)) : [];
    if (missing.length > 0) this.refuse(`missing ${missing.join(', ')}`, 'write what is missing');
    return this;
  }

  /** The keys of an object, in the order of the file. */
  keys(): string[] {
    if (isObject(this.value)) return Object.keys(this.value);
    this.refuse(`${described(this.value)} where an object belongs`, "write 'key: value' pairs");
    return [];
  }

  /** Text that is not blank, without spaces at its ends, in the shape of `pattern` where one is given. */
  readText(pattern?: { readonly shape: RegExp; readonly advice: string }): string {
    if (typeof this.value !== 'string' || this.value.trim() !== this.value || this.value === '') {
      this.refuse(
        `${described(this.value)} where text belongs`,
        'write text, in quotes where it looks like a number',
      );
      return '';
    }
    if (pattern && !pattern.shape.test(this.value))
      this.refuse(`${described(this.value)} has the wrong shape`, pattern.advice);
    return this.value;
  }

  /** One of the words given; `what` names them in the problem, such as 'duty'. */
  readOneOf<Word extends string>(words: readonly Word[], what: string): Word {
    const word = words.find((known) => known === this.value);
    if (word !== undefined) return word;
    this.refuse(`${described(this.value)} is not a known ${what}`, `write one of: ${words.join(', ')}`);
    // A stand-in of the right type; with no words at all there is nothing right, and the problem is noted.
    return words[0] as Word;
  }

  readBoolean(): boolean {
    if (typeof this.value !== 'boolean')
      this.refuse(`${described(this.value)} is not a yes or no`, 'write true or false');
    return this.value === true;
  }

  readWhole({ from, to }: { from: number; to: number }): number {
    if (typeof this.value === 'number' && this.value >= from && this.value <= to) return this.value;
    this.refuse(
      `${described(this.value)} is not a whole number in range`,
      `write ${from} to ${to}, without quotes`,
    );
    return from;
  }

  /** Whether this is text that begins as a number does. */
  beginsWithDigit(): boolean {
    return typeof this.value === 'string' && /^\d/.test(this.value);
  }

  /** A decimal number of nought or more, as text, so that no digit is lost. */
  readDecimal(): string {
    return this.readText({
      shape: /^(0|[1-9]\d*)(\.\d+)?$/,
      advice: "write a decimal number in quotes, as in '0.5'",
    });
  }

  readDay(): Day {
    if (typeof this.value === 'string' && isDay(this.value)) return this.value;
    this.refuse(`${described(this.value)} is not a day that exists`, 'write YYYY-MM-DD');
    return STAND_IN_DAY;
  }

  /** A list read item by item; an empty one is a problem unless `mayBeEmpty`. */
  readList<Item>(readItem: (item: Reader) => Item, { mayBeEmpty = false } = {}): Item[] {
    if (!Array.isArray(this.value)) {
      this.refuse(`${described(this.value)} where a list belongs`, "write one '- item' a line, or []");
      return [];
    }
    if (this.value.length === 0 && !mayBeEmpty) this.refuse('an empty list', 'write at least one item');
    return this.value.map((item: unknown, index) => readItem(this.child(`${this.path}[${index}]`, item)));
  }

  private child(path: string, value: unknown): Reader {
    return new Reader(this.problems, this.file, value === undefined ? NOTED : value, path);
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function described(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (isObject(value)) return 'an object';
  return typeof value === 'string' ? `'${value}'` : String(value);
}
