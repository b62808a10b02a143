import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/rules/calendar/day.js';
import { fitness, type Verdict } from '../../src/rules/fitness/fitness.js';
import { REFUSAL_CODES, type RefusalCode } from '../../src/rules/fitness/refusal.js';
import { CONDITIONS, EVENT_TYPES, INSPECTION_TYPES, type Gear } from '../../src/rules/gear/gear.js';
import { context, day, gear, kind, line, TODAY } from './example-gear.js';

const anyDay = fc.integer({ min: -800, max: 400 }).map((n) => addDays(TODAY, n));
const decimal = fc.integer({ min: 1, max: 4_000_000 }).map((grams) => String(grams / 1000));

const anyGear: fc.Arbitrary<Gear> = fc
  .record({
    condition: fc.constantFrom(...CONDITIONS, 'inService', 'inService'),
    missing: fc.boolean(),
    serialKnown: fc.boolean(),
    markings: fc.array(
      fc.record({
        measure: fc.constantFrom('workingLoadLimit', 'workingLoadLimit', 'lashingCapacity'),
        value: decimal,
        unit: fc.constantFrom('kg', 'lb', 'kN', 'ton'),
      }),
      { maxLength: 3 },
    ),
    manufacturedOn: anyDay,
    inspections: fc.array(
      fc.record({
        type: fc.constantFrom(...INSPECTION_TYPES),
        doneOn: anyDay,
        outcome: fc.constantFrom('fit', 'unfit'),
      }),
      { maxLength: 3 },
    ),
    events: fc.array(fc.record({ type: fc.constantFrom(...EVENT_TYPES), on: anyDay }), { maxLength: 2 }),
    commitments: fc.array(
      fc
        .record({ from: anyDay, days: fc.nat(20), jobId: fc.nat(3), late: fc.boolean() })
        .map(({ from, days, jobId, late }) => ({
          jobId,
          jobReference: `J-${jobId}`,
          from,
          to: addDays(from, days),
          late,
        })),
      { maxLength: 2 },
    ),
  })
  .map(gear);

const definition = kind({
  serviceLife: { years: 2, from: 'manufacturedOn', source: { key: 'as-nzs-1891-4' } },
});
const window = { from: day('2026-06-15'), to: day('2026-06-17') };

function codes(verdict: Verdict): Set<RefusalCode> {
  return new Set(verdict.refusals.map(({ code }) => code));
}

describe('fitness, whatever the gear', () => {
  it('is fit exactly when nothing is refused, and lists reasons in order', () => {
    fc.assert(
      fc.property(anyGear, (item) => {
        const verdict = fitness(item, line(), context({ kind: definition }));
        expect(verdict.fit).toBe(verdict.refusals.length === 0);
        const order = verdict.refusals.map(({ code }) => REFUSAL_CODES.indexOf(code));
        expect(order).toEqual([...order].sort((a, b) => a - b));
      }),
    );
  });

  it('a heavier need never makes unfit gear fit', () => {
    fc.assert(
      fc.property(anyGear, decimal, decimal, (item, one, other) => {
        const [light, heavy] = Number(one) <= Number(other) ? [one, other] : [other, one];
        const judge = (value: string) =>
          fitness(
            item,
            line({ rating: { measure: 'workingLoadLimit', value, unit: 'kg' } }),
            context({ kind: definition }),
          );
        for (const code of codes(judge(light))) expect(codes(judge(heavy))).toContain(code);
        expect(judge(light).fit || !judge(heavy).fit).toBe(true);
      }),
    );
  });

  it('a later back day never cures anything', () => {
    fc.assert(
      fc.property(anyGear, fc.nat(300), (item, days) => {
        const later = { from: window.from, to: addDays(window.to, days) };
        const before = fitness(item, line(), context({ kind: definition, window }));
        const after = fitness(item, line(), context({ kind: definition, window: later }));
        for (const code of codes(before)) expect(codes(after)).toContain(code);
      }),
    );
  });

  it('another mark never raises the rating', () => {
    fc.assert(
      fc.property(anyGear, decimal, (item, value) => {
        const marked = {
          ...item,
          markings: [...item.markings, { measure: 'workingLoadLimit', value, unit: 'kg' } as const],
        };
        const [before, after] = [item, marked].map((one) =>
          fitness(one, line(), context({ kind: definition })),
        );
        fc.pre(before?.ratingRatio !== undefined && after?.ratingRatio !== undefined);
        expect(before.ratingRatio.isLessThan(after.ratingRatio)).toBe(false);
      }),
    );
  });

  it('the answer for the job’s own commitment is the answer without it', () => {
    fc.assert(
      fc.property(anyGear, (item) => {
        const own = { ...item, commitments: item.commitments.map((one) => ({ ...one, jobId: 7 })) };
        const free = { ...item, commitments: [] };
        const at = context({ kind: definition, forJobId: 7 });
        expect(fitness(own, line(), at)).toEqual(fitness(free, line(), at));
      }),
    );
  });
});
