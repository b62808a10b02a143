import { addMonths, type Day } from '../calendar/day.js';
import type { Gear, InspectionRecord } from '../gear/gear.js';
import type { Figure, SourceKey, Working } from '../working.js';
import { newWithDeclaration } from './first-use.js';
import type { RequirementInForce } from './in-force.js';
import { intervalFor } from './interval.js';
import { lastInspection, lastPassed } from './last-inspection.js';

/** The due day that one rule gives, with its working. */
export interface RuleDay {
  readonly on: Day;
  readonly working: Working;
}

/** What the dated rules of one requirement give for one item. */
export interface RuleDays {
  readonly days: readonly RuleDay[];
  readonly neverExamined: boolean;
  readonly ignoredWrittenScheme: boolean;
}

/**
 * The due days of one requirement: months from the last inspection passed, the day its examiner named, or, for gear
 * never examined but new with a maker's declaration, months from the declaration and the last day for first use.
 * A failed inspection renews nothing, and ends what a declaration was good for.
 */
export function ruleDays(
  gear: Gear,
  { requirement, triggers, source }: RequirementInForce,
  today: Day,
): RuleDays {
  const interval = intervalFor(gear, requirement.type, triggers);
  const { ignoredWrittenScheme } = interval;
  const fromScheme = { key: source.key, ...interval };
  const passed = lastPassed(gear, requirement.type, today);
  if (passed) {
    const days = [...afterInterval(passed.doneOn, 'last inspection', fromScheme), ...examinersDay(passed)];
    return { days, neverExamined: false, ignoredWrittenScheme };
  }
  if (lastInspection(gear, requirement.type, today)) {
    return { days: [], neverExamined: false, ignoredWrittenScheme };
  }
  const asked = interval.months !== undefined || triggers.some(({ when }) => when === 'firstUse');
  const declared = newWithDeclaration(gear, triggers, today);
  if (!declared) return { days: [], neverExamined: asked, ignoredWrittenScheme };
  const { declarationOn, firstUseBy } = declared;
  const days = afterInterval(declarationOn, 'declaration', fromScheme);
  if (firstUseBy !== undefined) {
    days.push(declarationRunsOut(declarationOn, firstUseBy, source.key));
  }
  return { days, neverExamined: false, ignoredWrittenScheme };
}

function afterInterval(
  from: Day,
  name: string,
  interval: { readonly key: string; readonly months?: number; readonly byWrittenScheme: boolean },
): RuleDay[] {
  const { months } = interval;
  if (months === undefined) return [];
  const on = addMonths(from, months);
  const inputs = [dayFigure(name, from), { name: 'interval', value: String(months), unit: 'months' }];
  const title = interval.byWrittenScheme ? 'Due by written scheme' : 'Due by interval';
  const formula = `${name} + interval, clamped to the end of the month`;
  return [{ on, working: { title, formula, inputs, result: dayFigure('due', on), source: interval.key } }];
}

function examinersDay({ nextDueOn }: InspectionRecord): RuleDay[] {
  if (nextDueOn === undefined) return [];
  const working: Working = {
    title: 'Due by examiner',
    formula: 'due = named',
    inputs: [dayFigure('named', nextDueOn)],
    result: dayFigure('due', nextDueOn),
    source: 'common-practice',
  };
  return [{ on: nextDueOn, working }];
}

function declarationRunsOut(declarationOn: Day, firstUseBy: Day, source: SourceKey): RuleDay {
  const working: Working = {
    title: 'Due before first use',
    formula: 'declaration + months it is good for, clamped to the end of the month',
    inputs: [dayFigure('declaration', declarationOn)],
    result: dayFigure('due', firstUseBy),
    source,
  };
  return { on: firstUseBy, working };
}

function dayFigure(name: string, day: Day): Figure {
  return { name, value: day, unit: '' };
}
