import { addMonths, type Day } from '../calendar/day.js';
import type { Gear } from '../gear/gear.js';
import type { KindDefinition } from '../gear/kind.js';
import type { NeededDays } from './dates.js';
import type { Refusal } from './refusal.js';

/** Whether the item outlives the days it is needed, where its kind has a service life. Its last day is still good. */
export function serviceLifeRefusals(gear: Gear, kind: KindDefinition, days: NeededDays): Refusal[] {
  if (!kind.serviceLife) return [];
  const source = kind.serviceLife.source.key;
  const from = startOfLife(gear, kind.serviceLife.from);
  if (from === undefined || from > days.today) return [{ code: 'service_life_unknown', source }];
  const on = addMonths(from, Math.floor(kind.serviceLife.years * 12));
  if (on < days.today) return [{ code: 'past_service_life', on, source }];
  if (on < days.neededThrough) return [{ code: 'service_life_ends_during_job', on, source }];
  return [];
}

/** Where the day of first use is not known, life counts from manufacture, which is never later. */
function startOfLife(gear: Gear, from: 'manufacturedOn' | 'firstUsedOn'): Day | undefined {
  return from === 'firstUsedOn' ? (gear.firstUsedOn ?? gear.manufacturedOn) : gear.manufacturedOn;
}
