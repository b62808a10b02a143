import type { Day } from '../calendar/day.js';
import type { Gear } from '../gear/gear.js';
import { checkChart } from '../hosting/check-chart.js';
import type { OutsideChart } from '../hosting/chart-capacity.js';
import type { HostingNeed } from '../hosting/hosting-need.js';
import type { LoadChart } from '../hosting/load-chart.js';
import { residualCapacity } from '../hosting/residual-capacity.js';
import type { GearLine } from '../lines/need.js';
import { Exact } from '../quantities/exact.js';
import type { Working } from '../working.js';
import type { Refusal } from './refusal.js';

/** How a host machine answers what hangs on it. */
export interface Hosted {
  readonly refusals: readonly Refusal[];
  readonly workings: readonly Working[];
}

/**
 * Whether the item's own load chart carries the lifter and the load where the line needs them, and whether its plate
 * or its maker covers the lifter. Equality passes. A line that hosts nothing asks nothing.
 * @throws RangeError when a figure of the need is no decimal text.
 */
export function hosted(gear: Gear, { hosting }: GearLine): Hosted {
  if (!hosting) return { refusals: [], workings: [] };
  const { loadChart } = gear;
  const uncovered = coverRefusals(loadChart);
  if (!loadChart || checkChart(loadChart).length > 0) {
    return { refusals: [{ code: 'no_load_chart', source: 'as-2359-1' }, ...uncovered], workings: [] };
  }
  const carried = carry(loadChart, hosting);
  return { refusals: [...carried.refusals, ...uncovered], workings: carried.workings };
}

/** Whether the days of the hire hold those the item is needed on. The last day of the hire is still a good one. */
export function hireRefusals({ hire }: Gear, days: { readonly from: Day; readonly through: Day }): Refusal[] {
  const refusals: Refusal[] = [];
  if (hire?.from !== undefined && days.from < hire.from) {
    refusals.push({ code: 'outside_hire', subject: 'hiredFrom', on: hire.from, source: 'common-practice' });
  }
  if (hire?.to !== undefined && hire.to < days.through) {
    refusals.push({ code: 'outside_hire', subject: 'hiredTo', on: hire.to, source: 'common-practice' });
  }
  return refusals;
}

function carry(chart: LoadChart, hosting: HostingNeed): Hosted {
  const residual = residualCapacity(chart, hosting);
  if (!residual.ok) return { refusals: [outside(residual.outside)], workings: [] };
  const needed = Exact.of(hosting.loadKg);
  const { netKg, workings } = residual;
  if (!netKg.isLessThan(needed)) return { refusals: [], workings };
  const refusal: Refusal = {
    code: 'residual_capacity_too_low',
    needed: needed.toString(),
    has: netKg.toString(),
    unit: 'kg',
    source: 'cfr-1910-178',
  };
  return { refusals: [refusal], workings };
}

function outside({ subject, needed, has }: OutsideChart): Refusal {
  return {
    code: 'outside_load_chart',
    subject,
    ...(needed && { needed: needed.toString() }),
    ...(has && { has: has.toString() }),
    unit: 'mm',
    source: 'common-practice',
  };
}

/** 29 CFR 1910.178(a)(5) and WorkSafe Victoria: an attachment is used where the maker approves it and the plate lists it. */
function coverRefusals(chart: LoadChart | undefined): Refusal[] {
  const reference = chart?.attachmentCover?.reference ?? '';
  return reference.trim() === ''
    ? [{ code: 'attachment_not_covered', source: 'worksafe-victoria-forklifts' }]
    : [];
}
