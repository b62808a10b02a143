import type { MethodDefinition } from '../lines/method.js';
import type { LineProblem } from '../lines/line-problem.js';
import { Exact } from '../quantities/exact.js';
import type { CalculationProblem } from './calculation.js';
import {
  PARAMETERS,
  type MethodParameter,
  type ParameterDefinition,
  type ParameterKey,
  type StatedParameter,
} from './parameter.js';

const DECIMAL = /^\d+(\.\d+)?$/;

/** Every problem of the figures that a job states for itself: unknown, twice, unreadable, beyond the limits, without a reason. */
export function checkStated(
  { parameters }: MethodDefinition,
  stated: readonly StatedParameter[],
): readonly LineProblem[] {
  return stated.flatMap(({ key: subject, value, reason }, index) => {
    const known = parameters.find(({ key }) => key === subject);
    if (!known) return [{ code: 'unknown_parameter', subject }];
    const problems: LineProblem[] = [];
    if (stated.findIndex(({ key }) => key === subject) < index)
      problems.push({ code: 'parameter_stated_twice', subject });
    if (reason.trim() === '') problems.push({ code: 'reason_missing', subject });
    return [...problems, ...checkValue(known, value)];
  });
}

function checkValue({ key: subject, least, most }: MethodParameter, value: string): LineProblem[] {
  if (!DECIMAL.test(value)) return [{ code: 'parameter_unreadable', subject }];
  const { whole, unit }: ParameterDefinition = PARAMETERS[subject];
  if (whole && !/^\d+$/.test(value)) return [{ code: 'parameter_not_whole', subject }];
  const figure = Exact.of(value);
  if (!figure.isLessThan(Exact.of(least)) && !Exact.of(most).isLessThan(figure)) return [];
  return [{ code: 'parameter_out_of_range', subject, least, most, unit }];
}

/** A figure as a job uses it: its own where it states one, else the method's. */
export interface JobParameter extends MethodParameter {
  readonly stated?: { readonly reason: string; readonly methodValue: string | null };
}

/** Every figure of the method as this job uses it. What is stated must have passed `checkStated`. */
export function jobParameters(
  { parameters }: MethodDefinition,
  stated: readonly StatedParameter[],
): readonly JobParameter[] {
  return parameters.map((parameter) => {
    const own = stated.find(({ key }) => key === parameter.key);
    if (!own) return parameter;
    return { ...parameter, value: own.value, stated: { reason: own.reason, methodValue: parameter.value } };
  });
}

/** The figures of one calculation by their keys, or the ones that the job has yet to state. */
export type Figures<Key extends ParameterKey> =
  | {
      readonly ok: true;
      readonly of: (key: Key) => Exact;
      readonly optional: (key: Key) => Exact | undefined;
    }
  | { readonly ok: false; readonly problems: readonly CalculationProblem[] };

/**
 * Looks up figures that a calculation cannot do without.
 * @throws RangeError on a look-up of a figure that the method does not have, which a checked catalogue rules out.
 */
export function figuresOf<Key extends ParameterKey>(
  parameters: readonly JobParameter[],
  keys: readonly Key[],
): Figures<Key> {
  const asked = parameters.filter(({ key }) => keys.some((wanted) => wanted === key));
  const missing = asked.filter(({ value, optional }) => value === null && !optional);
  if (missing.length > 0) {
    return { ok: false, problems: missing.map(({ key }) => ({ code: 'parameter_missing', subject: key })) };
  }
  const optional = (key: Key): Exact | undefined => {
    const value = asked.find((parameter) => parameter.key === key)?.value ?? null;
    return value === null ? undefined : Exact.of(value);
  };
  return {
    ok: true,
    optional,
    of(key) {
      const figure = optional(key);
      if (!figure) throw new RangeError(`the method has no figure '${key}'`);
      return figure;
    },
  };
}
