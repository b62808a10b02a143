import type { Calculated } from '../calculations/calculation.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';

const NOUGHT = Exact.of('0');

/**
 * The length of a line that steadies a panel at its highest, held by someone who stands off from below it. A height or
 * a distance that is not above 0 is a problem `parameter_out_of_range`: nobody stands under a load. The line is the tag
 * line of 29 CFR 1926.1401; the length is common practice, no source.
 */
export function safetyLines({
  liftHeightM,
  standOffM,
}: {
  readonly liftHeightM: Exact;
  readonly standOffM: Exact;
}): Calculated<{ safetyLineLengthM: Exact }> {
  const parameters = [
    { subject: 'liftHeightM', length: liftHeightM },
    { subject: 'standOffM', length: standOffM },
  ];
  const wrong = parameters.filter(({ length }) => !NOUGHT.isLessThan(length));
  if (wrong.length > 0) {
    return {
      ok: false,
      problems: wrong.map(({ subject, length }) => ({
        code: 'parameter_out_of_range',
        subject,
        has: length.toString(),
        unit: 'm',
      })),
    };
  }
  const safetyLineLengthM = liftHeightM.plus(standOffM);
  const working: Working = {
    title: 'Safety line: length',
    formula: 'lift height + stand-off',
    inputs: [metres('lift height', liftHeightM), metres('stand-off', standOffM)],
    result: metres('length of a safety line', safetyLineLengthM),
    source: 'cfr-1926-1401',
    caution: [
      'Longer than the slope from the panel to the hand, which is the safe side.',
      'The line steadies the load and is never fall arrest. Never wrap it round a hand or the body, and stand off from under the load.',
    ].join(' '),
  };
  return { ok: true, figures: { safetyLineLengthM }, workings: [working] };
}

function metres(name: string, length: Exact): Working['result'] {
  return { name, value: length.toString(), unit: 'm' };
}
