import { usedBy } from '../rules/calculations/calculations.js';
import {
  CALCULATIONS,
  PARAMETER_KEYS,
  type CalculationKey,
  type MethodParameter,
} from '../rules/calculations/parameter.js';
import type { MethodDefinition } from '../rules/lines/method.js';
import { Exact } from '../rules/quantities/exact.js';
import { readCitation, type Sources } from './read-source.js';
import type { Reader } from './reader.js';

/** Reads what a method works out and the figures it starts from: all that its calculations use, and no others. */
export function readArithmetic(
  reader: Reader,
  sources: Sources,
): Pick<MethodDefinition, 'calculations' | 'parameters'> {
  const notedBefore = reader.noted();
  const calculations = reader
    .at('calculations')
    .readList((entry) => entry.readOneOf(CALCULATIONS, 'calculation'), { mayBeEmpty: true });
  const parameters = reader
    .at('parameters')
    .readList((entry) => readParameter(entry, sources), { mayBeEmpty: true });
  if (reader.noted() === notedBefore) checkAllUsed(reader, calculations, parameters);
  return { calculations, parameters };
}

function readParameter(reader: Reader, sources: Sources): MethodParameter {
  reader.expectKeys(['key', 'label', 'value', 'least', 'most', 'source'], ['optional', 'caution']);
  const notedBefore = reader.noted();
  const value = reader.at('value').isNull() ? null : reader.at('value').readDecimal();
  const [least, most] = [reader.at('least').readDecimal(), reader.at('most').readDecimal()];
  const parameter: MethodParameter = {
    key: reader.at('key').readOneOf(PARAMETER_KEYS, 'parameter'),
    label: reader.at('label').readText(),
    value,
    optional: reader.has('optional') && reader.at('optional').readBoolean(),
    least,
    most,
    ...(reader.has('caution') && { caution: reader.at('caution').readText() }),
    source: readCitation(reader.at('source'), sources),
  };
  if (reader.noted() === notedBefore && value !== null && !isWithin(value, least, most))
    reader.at('value').refuse(`${value} is not from ${least} to ${most}`, 'mend the value or its limits');
  return parameter;
}

function isWithin(value: string, least: string, most: string): boolean {
  const figure = Exact.of(value);
  return !figure.isLessThan(Exact.of(least)) && !Exact.of(most).isLessThan(figure);
}

function checkAllUsed(
  reader: Reader,
  calculations: readonly CalculationKey[],
  parameters: readonly MethodParameter[],
): void {
  const used = new Set(calculations.flatMap((calculation) => usedBy(calculation)));
  const keys = parameters.map(({ key }) => key);
  const lacking = [...used].filter((key) => !keys.includes(key));
  const idle = keys.filter((key) => !used.has(key));
  const twice = keys.filter((key, index) => keys.indexOf(key) < index);
  const place = reader.at('parameters');
  if (lacking.length > 0) place.refuse(`missing ${lacking.join(', ')}`, 'state what the calculations use');
  if (idle.length > 0) place.refuse(`no calculation uses ${idle.join(', ')}`, 'leave out what is not used');
  if (twice.length > 0) place.refuse(`${twice.join(', ')} is stated twice`, 'state each figure once');
}
