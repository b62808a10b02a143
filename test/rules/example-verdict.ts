import { fitness, type FitnessContext } from '../../src/rules/fitness/fitness.js';
import type { RefusalCode } from '../../src/rules/fitness/refusal.js';
import type { Gear } from '../../src/rules/gear/gear.js';
import type { KindDefinition } from '../../src/rules/gear/kind.js';
import type { GearLine } from '../../src/rules/lines/need.js';
import { context, gear, kind, line } from './example-gear.js';

/** The verdict on the example sling with these changes. Needed from 15 to 17 June, looked at on 10 June. */
export function judge(
  changes: {
    gear?: Partial<Gear>;
    line?: Partial<GearLine>;
    kind?: Partial<KindDefinition>;
    context?: Partial<FitnessContext>;
  } = {},
) {
  return fitness(
    gear(changes.gear),
    line(changes.line),
    context({ kind: kind(changes.kind), ...changes.context }),
  );
}

/** Its codes alone. */
export function codes(changes: Parameters<typeof judge>[0]): RefusalCode[] {
  return judge(changes).refusals.map(({ code }) => code);
}
