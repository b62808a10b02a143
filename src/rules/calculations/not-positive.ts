import type { Exact } from '../quantities/exact.js';
import type { CalculationProblem } from './calculation.js';
import { PARAMETERS, type ParameterKey } from './parameter.js';

/** The figures that are nought or less, as problems: no length, mass or limit of a lift can be. */
export function notPositive(
  figures: readonly (readonly [key: ParameterKey, value: Exact])[],
): readonly CalculationProblem[] {
  return figures
    .filter(([, value]) => value.isZero() || value.isNegative())
    .map(([key, value]) => outOfRange(key, value.toString()));
}

/** The problem of a figure that no lift can have; `needed` is the limit that it breaks, where one can be told. */
export function outOfRange(key: ParameterKey, has: string, needed?: string): CalculationProblem {
  const { unit } = PARAMETERS[key];
  return {
    code: 'parameter_out_of_range',
    subject: key,
    ...(needed !== undefined && { needed }),
    has,
    ...(unit !== '' && { unit }),
  };
}
