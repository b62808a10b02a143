import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { UnknownEntryError } from '../../src/catalogue/catalogue.js';
import { loadCatalogue } from '../../src/catalogue/load-catalogue.js';
import { packageRoot } from '../../src/package-root.js';

const root = packageRoot();
const catalogue = loadCatalogue(join(root, 'config'));
const everything = [catalogue.kinds(), catalogue.schemes(), catalogue.methods()];

/** Every object under `value` that is a citation: it stands under the key `source`. */
function citations(value: unknown): Record<string, unknown>[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]: [string, unknown]) =>
    key === 'source' ? [inner as Record<string, unknown>] : citations(inner),
  );
}

const cited = citations(everything);
const rulesText = readdirSync(join(root, 'src/rules'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(join(root, 'src/rules', name), 'utf8'))
  .join('\n');
/** Source keys that workings and refusals of the rules name, written `source: 'key'`. */
const citedByRules = [...rulesText.matchAll(/source: '([^']+)'/g)].map((match) => match[1] ?? '');

describe('sources', () => {
  it('are cited by every value of the catalogue that needs one', () => {
    // 11 kinds, each with a caution at least; 10 lines; every dated entry of every scheme.
    expect(cited.length).toBeGreaterThan(80);
    const entries = catalogue
      .schemes()
      .flatMap(({ inspections }) => inspections.flatMap((each) => each.entries));
    const values = [
      ...entries,
      ...catalogue.kinds().flatMap((kind) => [...kind.cautions, kind.rating, kind.serviceLife]),
      ...catalogue
        .methods()
        .flatMap((method) => [...method.lines, ...method.cautions, method.estimateMargin]),
    ].filter((value) => value !== undefined);
    for (const { source } of values) expect(catalogue.source(source.key).title).not.toBe('');
  });

  it('say how each value was verified, unless it is common practice', () => {
    for (const { key, verified } of cited) {
      const expected = key === 'common-practice' ? [undefined] : ['read', 'readInReproduction', 'memory'];
      expect(expected, `citation of ${String(key)}`).toContain(verified);
    }
  });

  it('are all used, by config or by a rule', () => {
    const used = new Set([...cited.map(({ key }) => key), ...citedByRules]);
    const unused = catalogue.sources().filter(({ key }) => !used.has(key));
    expect(unused).toEqual([]);
  });

  it('are listed for every key that a rule names', () => {
    expect(citedByRules).toContain('common-practice');
    const listed = catalogue.sources().map(({ key }) => key);
    expect(citedByRules.filter((key) => !listed.includes(key))).toEqual([]);
  });
});

describe('schemes', () => {
  const today = '2026-11-25';

  it('ask of every kind, in every place, a check each shift and an inspection by date', () => {
    for (const { scheme, inspections } of catalogue.schemes()) {
      for (const { kind } of catalogue.kinds()) {
        const whens = inspections
          .filter(({ kinds }) => kinds.includes(kind))
          .flatMap(
            ({ entries }) => entries.filter(({ validFrom }) => validFrom <= today).at(-1)?.triggers ?? [],
          )
          .map(({ when }) => when);
        expect(whens, `${scheme} ${kind}`).toEqual(
          expect.arrayContaining(['eachShift', 'interval', 'afterEvent']),
        );
      }
    }
  });

  it('were checked on a day that has been', () => {
    const days = catalogue
      .schemes()
      .flatMap(({ inspections }) =>
        inspections.flatMap(({ entries }) => entries.map(({ checkedOn }) => checkedOn)),
      );
    expect(days.length).toBeGreaterThan(30);
    for (const day of days)
      expect(day <= new Date().toISOString().slice(0, 10) && day >= '2026-01-01').toBe(true);
  });

  it('are the four places', () => {
    expect(catalogue.schemes().map(({ scheme }) => scheme)).toEqual(['au', 'eu', 'gb', 'us']);
  });
});

describe('kinds', () => {
  function kindsCalled(word: string): string[] {
    const asked = word.toLowerCase();
    return catalogue
      .kinds()
      .filter(({ name, alsoCalled }) => [name, ...alsoCalled].some((known) => known.toLowerCase() === asked))
      .map(({ kind }) => kind);
  }

  it.each([
    ['Ratchet strap', 'ratchetStrap'],
    ['Zurrgurt', 'ratchetStrap'],
    ['Panel lifter', 'panelLifter'],
    ['Plattenheber', 'panelLifter'],
    ['Trolley', 'panelTrolley'],
    ['Rollwagen', 'panelTrolley'],
    ['Spreader bar', 'spreaderBar'],
    ['Traverse', 'spreaderBar'],
    ['Safety line', 'safetyLine'],
    ['Web sling', 'sling'],
    ['Rundschlinge', 'sling'],
    ['Bow shackle', 'shackle'],
  ])('know the word %s that stores write', (word, kind) => {
    expect(kindsCalled(word)).toEqual([kind]);
  });

  it('leave a misspelling to be asked about', () => {
    expect(kindsCalled('Trolly')).toEqual([]);
  });

  it('keep lashing and lifting apart', () => {
    expect(catalogue.kind('ratchetStrap').duties).toEqual(['lashing']);
    expect(catalogue.kind('ratchetStrap').rating?.units).toEqual(['daN', 'kN', 'kgf', 'lbf']);
    expect(catalogue.kind('safetyLine').duties).toEqual(['steadying']);
    expect(catalogue.kind('safetyLine').rating).toBeUndefined();
  });
});

describe('a catalogue', () => {
  it.each([
    ['kind', () => catalogue.kind('hook')],
    ['scheme', () => catalogue.scheme('mars')],
    ['method', () => catalogue.method('by-magic')],
    ['source', () => catalogue.source('hearsay')],
  ])('names what it knows when asked for an unknown %s', (what, ask) => {
    expect(ask).toThrow(UnknownEntryError);
    expect(ask).toThrow(new RegExp(`There is no ${what} '.+' in the catalogue\\. Known: `));
  });
});
