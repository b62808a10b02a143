import type { PlanInput } from './job-plan.js';

/** How many items served each line and are back. One that came back unfit while the job goes on has to be replaced. */
export function servedByLine({
  held,
  gear,
  window,
  today,
}: Pick<PlanInput, 'held' | 'gear' | 'window' | 'today'>): ReadonlyMap<string, number> {
  const served = new Map<string, number>();
  const facts = new Map(gear.map((item) => [item.itemId, item]));
  for (const { itemId, lineKey, state } of held) {
    if (state !== 'back' && state !== 'missing') continue;
    const item = facts.get(itemId);
    const lost = item !== undefined && (item.missing || item.condition !== 'inService');
    if (!lost || today >= window.to) served.set(lineKey, (served.get(lineKey) ?? 0) + 1);
  }
  return served;
}
