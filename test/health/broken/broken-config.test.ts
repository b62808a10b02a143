import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { loadCatalogue } from '../../../src/catalogue/load-catalogue.js';
import { CatalogueError } from '../../../src/catalogue/problems.js';
import { packageRoot } from '../../../src/package-root.js';
import { fitness } from '../../../src/rules/fitness/fitness.js';
import { gear, TODAY } from '../../rules/example-gear.js';

/** One way to break the config folder; see the head of cases.yaml. */
interface BrokenCase {
  readonly name: string;
  /** The file in which the first `replace` becomes `with`. */
  readonly file?: string;
  readonly replace?: string;
  readonly with?: string;
  /** A file to write, with `with` in it unless that is for `file`. */
  readonly create?: string;
  /** A file or folder to take away. */
  readonly remove?: string;
  readonly expect: readonly string[];
  /** True where other problems follow that are of no interest. */
  readonly andMore?: boolean;
}

const good = join(packageRoot(), 'config');
const cases: readonly BrokenCase[] = parse(
  readFileSync(join(packageRoot(), 'test/health/broken/cases.yaml'), 'utf8'),
);

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tackleroom-config-'));
  for (const part of ['sources.yaml', 'kinds', 'schemes', 'methods']) {
    cpSync(join(good, part), join(folder, part), { recursive: true });
  }
  // One method is enough: the second would only repeat what is wrong with the kinds of both.
  rmSync(join(folder, 'methods/light-panel.yaml'));
});
afterEach(() => rmSync(folder, { recursive: true }));

function breakConfig(broken: BrokenCase): void {
  if (broken.remove) rmSync(join(folder, broken.remove), { recursive: true });
  if (broken.create) writeFileSync(join(folder, broken.create), broken.file ? '[]' : (broken.with ?? ''));
  if (!broken.file) return;
  const path = join(folder, broken.file);
  const text = readFileSync(path, 'utf8');
  if (!broken.replace || !text.includes(broken.replace))
    throw new Error(`'${broken.replace}' is not in ${broken.file}`);
  // A function, because '$' in a replacement text has a meaning of its own.
  writeFileSync(
    path,
    text.replace(broken.replace, () => broken.with ?? ''),
  );
}

function problemLines(): string[] {
  try {
    loadCatalogue(folder);
  } catch (error) {
    if (error instanceof CatalogueError) return error.message.split('\n').slice(1);
    throw error;
  }
  return [];
}

describe('a broken config folder', () => {
  it('comes from a good one', () => {
    expect(problemLines()).toEqual([]);
    expect(cases.length).toBeGreaterThan(40);
  });

  it.each(cases.map((broken) => [broken.name, broken] as const))('is refused for %s', (_name, broken) => {
    breakConfig(broken);
    const lines = problemLines();
    for (const words of broken.expect) expect(lines.join('\n')).toContain(words);
    if (!broken.andMore) expect(lines).toHaveLength(broken.expect.length);
  });
});

describe('a larger config folder', () => {
  it('may hold several methods', () => {
    const text = readFileSync(join(folder, 'methods/tall-panel.yaml'), 'utf8');
    writeFileSync(
      join(folder, 'methods/low-panel.yaml'),
      text.replace('method: tall-panel', 'method: low-panel'),
    );
    const catalogue = loadCatalogue(folder);
    expect(catalogue.methods().map(({ method }) => method)).toEqual(['low-panel', 'tall-panel']);
    expect(catalogue.method('low-panel').lines).toHaveLength(13);
  });

  it('takes a new kind from one file, and refuses its gear until a scheme names it', () => {
    const hook = [
      'kind: hook',
      'name: Hook',
      'plural: Hooks',
      'tagPrefix: HK',
      'alsoCalled: [swivel hook]',
      'duties: [lifting]',
      'dimensions: []',
      'checklist:',
      '  - key: throat',
      '    look: Look at the throat.',
      '    failsWhen: It is open.',
      '    severity: immediateDanger',
      '    source: { key: common-practice }',
      'cautions:',
      '  - { text: Nobody stands under a load., source: { key: common-practice } }',
    ];
    writeFileSync(join(folder, 'kinds/hook.yaml'), hook.join('\n'));
    const catalogue = loadCatalogue(folder);
    const kind = catalogue.kind('hook');
    const item = { ...gear(), kind: 'hook', markings: [] };
    const line = {
      key: 'hooks',
      label: 'Hooks',
      kind: 'hook',
      duty: 'lifting' as const,
      quantity: 1,
      dimensions: [],
      workings: [],
    };
    for (const scheme of catalogue.schemes()) {
      const verdict = fitness(item, line, { kind, scheme, window: { from: TODAY, to: TODAY }, today: TODAY });
      expect(verdict.refusals.map(({ code }) => code)).toContain('no_rule_for_kind');
    }
  });

  it('keeps a withdrawn requirement on record as null', () => {
    const path = join(folder, 'schemes/eu.yaml');
    const later = [
      '        checkedOn: 2026-11-25',
      '      - validFrom: 2026-01-01',
      '        triggers: null',
      '        source: { key: common-practice }',
      '        checkedOn: 2026-11-25',
    ].join('\n');
    writeFileSync(path, readFileSync(path, 'utf8').replace('        checkedOn: 2026-11-25', later));
    const entries = loadCatalogue(folder).scheme('eu').inspections[0]?.entries;
    expect(entries?.map(({ triggers }) => triggers)).toEqual([[{ when: 'eachShift' }], null]);
  });
});
