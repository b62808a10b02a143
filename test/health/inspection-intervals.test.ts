import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { loadCatalogue } from '../../src/catalogue/load-catalogue.js';
import { packageRoot } from '../../src/package-root.js';
import { EVENT_TYPES } from '../../src/rules/gear/gear.js';
import type { Trigger } from '../../src/rules/due/scheme.js';

interface Golden {
  readonly intervals: readonly { scheme: string; kind: string; type: string; months: number; from: string }[];
  readonly declarations: readonly { scheme: string; kind: string; months: number; from: string }[];
  readonly lifts: readonly { scheme: string; kind: string; type: string; lifts: number; from: string }[];
  readonly idleMonths: readonly {
    scheme: string;
    kind: string;
    type: string;
    months: number;
    from: string;
  }[];
  readonly serviceLives: readonly { kind: string; years: number; start: string; from: string }[];
}

const golden: Golden = parse(
  readFileSync(join(packageRoot(), 'test/golden/inspection-intervals.yaml'), 'utf8'),
);
const catalogue = loadCatalogue(join(packageRoot(), 'config'));

/** Every trigger of every entry of config, beside the scheme, kind and type it is for. */
const triggers = catalogue
  .schemes()
  .flatMap(({ scheme, inspections }) =>
    inspections.flatMap(({ kinds, type, entries }) =>
      kinds.flatMap((kind) =>
        entries.flatMap((entry) =>
          (entry.triggers ?? []).map((trigger: Trigger) => ({ scheme, kind, type, trigger })),
        ),
      ),
    ),
  );

function sorted(rows: readonly string[]): string[] {
  return [...rows].sort();
}

describe('inspection intervals of config, against the separately written table', () => {
  it('holds the published months for every place and kind, and no others', () => {
    const inConfig = triggers.flatMap(({ scheme, kind, type, trigger }) =>
      trigger.when === 'interval' ? [`${scheme} ${kind} ${type} ${trigger.months}`] : [],
    );
    const published = golden.intervals.map(
      ({ scheme, kind, type, months }) => `${scheme} ${kind} ${type} ${months}`,
    );
    expect(sorted(inConfig)).toEqual(sorted(published));
  });

  it('counts lifts and months of lying idle only as published', () => {
    const counted = triggers.flatMap(({ scheme, kind, type, trigger }) =>
      trigger.when === 'everyLifts' ? [`${scheme} ${kind} ${type} ${trigger.lifts}`] : [],
    );
    expect(sorted(counted)).toEqual(
      sorted(golden.lifts.map(({ scheme, kind, type, lifts }) => `${scheme} ${kind} ${type} ${lifts}`)),
    );
    const idle = triggers.flatMap(({ scheme, kind, type, trigger }) =>
      trigger.when === 'afterIdle' ? [`${scheme} ${kind} ${type} ${trigger.months}`] : [],
    );
    expect(sorted(idle)).toEqual(
      sorted(
        golden.idleMonths.map(({ scheme, kind, type, months }) => `${scheme} ${kind} ${type} ${months}`),
      ),
    );
  });

  it('asks for an inspection of every kind everywhere after each event that can be recorded', () => {
    const silent = catalogue.schemes().flatMap(({ scheme }) =>
      catalogue.kinds().flatMap(({ kind }) => {
        const asked = triggers.flatMap(({ trigger, ...of }) =>
          of.scheme === scheme && of.kind === kind && trigger.when === 'afterEvent' ? trigger.events : [],
        );
        return EVENT_TYPES.filter((event) => !asked.includes(event)).map(
          (event) => `${scheme} ${kind} ${event}`,
        );
      }),
    );
    expect(silent).toEqual([]);
  });

  it('allows a declaration in place of a first examination only as published', () => {
    const inConfig = triggers.flatMap(({ scheme, kind, trigger }) =>
      trigger.when === 'firstUse' && trigger.declarationMonths !== undefined
        ? [`${scheme} ${kind} ${trigger.declarationMonths}`]
        : [],
    );
    const published = golden.declarations.map(({ scheme, kind, months }) => `${scheme} ${kind} ${months}`);
    expect(sorted(inConfig)).toEqual(sorted(published));
  });

  it('holds the published service lives', () => {
    const inConfig = catalogue
      .kinds()
      .flatMap(({ kind, serviceLife }) =>
        serviceLife ? [`${kind} ${serviceLife.years} ${serviceLife.from}`] : [],
      );
    const published = golden.serviceLives.map(({ kind, years, start }) => `${kind} ${years} ${start}`);
    expect(sorted(inConfig)).toEqual(sorted(published));
  });

  it('says common practice for a figure exactly where config cites it', () => {
    const cited = catalogue
      .schemes()
      .flatMap(({ scheme, inspections }) =>
        inspections.flatMap(({ kinds, type, entries }) =>
          entries.flatMap(({ triggers: all, source }) =>
            (all ?? []).some(({ when }) => when === 'interval') && source.key === 'common-practice'
              ? kinds.map((kind) => `${scheme} ${kind} ${type}`)
              : [],
          ),
        ),
      );
    const unsourced = golden.intervals
      .filter(({ from }) => from === 'common practice, no source')
      .map(({ scheme, kind, type }) => `${scheme} ${kind} ${type}`);
    expect(sorted(cited)).toEqual(sorted(unsourced));
  });
});
