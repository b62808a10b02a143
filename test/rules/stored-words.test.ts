import { describe, expect, it } from 'vitest';
import { CALCULATION_PROBLEM_CODES } from '../../src/rules/calculations/calculation.js';
import { REFUSAL_CODES } from '../../src/rules/fitness/refusal.js';
import { CONDITIONS, DUTIES, EVENT_TYPES, INSPECTION_TYPES } from '../../src/rules/gear/gear.js';
import { VERIFICATIONS } from '../../src/rules/citation.js';
import { LINE_PROBLEM_CODES } from '../../src/rules/lines/line-problem.js';
import { COUNTED_BY, SIZE_RULES } from '../../src/rules/lines/method.js';
import { SCHEDULE_PROBLEM_CODES } from '../../src/rules/panels/check-schedule.js';
import { MEASURES } from '../../src/rules/quantities/marking.js';
import { UNIT_SYMBOLS } from '../../src/rules/quantities/units.js';

// These words stand in rows, in the catalogue's files and in what other programs were told: none may be renamed.
describe('words that are stored', () => {
  it.each<[string, readonly string[], string]>([
    ['duties', DUTIES, 'lifting lashing carrying steadying fallArrest hosting'],
    ['conditions', CONDITIONS, 'inService quarantined underRepair scrapped'],
    ['inspection types', INSPECTION_TYPES, 'preUseCheck interimInspection thoroughExamination proofLoadTest'],
    ['event types', EVENT_TYPES, 'dropped overloaded altered repaired longIdle'],
    ['ways a source was checked', VERIFICATIONS, 'read readInReproduction memory'],
    ['measures', MEASURES, 'workingLoadLimit lashingCapacity ratedCapacity ratedPersons'],
    ['counts', COUNTED_BY, 'crew lifterInUse panelOnWheels truckUnloading personAloft job'],
    ['size rules', SIZE_RULES, 'atLeast atMost equals'],
    [
      'units',
      UNIT_SYMBOLS,
      'kg g t lb shortTon longTon N daN kN kgf lbf kip m mm cm ft in persons kg/m2 lb/ft2',
    ],
  ])('%s keep their words', (_what, words, kept) => {
    expect([...words].sort()).toEqual(kept.split(' ').sort());
  });
});

describe('codes that other programs read', () => {
  it.each<[string, readonly string[]]>([
    ['refusals', REFUSAL_CODES],
    ['line problems', LINE_PROBLEM_CODES],
    ['schedule problems', SCHEDULE_PROBLEM_CODES],
    ['calculation problems', CALCULATION_PROBLEM_CODES],
  ])('of %s are plain words, each once', (_what, codes) => {
    expect(codes.length).toBeGreaterThan(0);
    expect(new Set(codes).size).toBe(codes.length);
    for (const code of codes) expect(code).toMatch(/^[a-z]+(_[a-z]+)*$/);
  });
});
