import type { InspectionType } from '../rules/gear/gear.js';
import type { LoadChart } from '../rules/hosting/load-chart.js';
import type { Measure } from '../rules/quantities/marking.js';

/** A batch of like items of the demo scenario, all invented. */
export interface DemoBatch {
  readonly kind: string;
  readonly prefix: string;
  readonly count: number;
  readonly maker: string;
  /** The maker's own batches that it came from, in the order of the tags, in equal parts. */
  readonly lots?: readonly string[];
  /** Which store, by its place in the list of demo stores. */
  readonly store: 0 | 1;
  readonly rating?: { readonly measure: Measure; readonly value: string; readonly unit: string };
  readonly dimensions?: Readonly<Record<string, string>>;
  readonly loadChart?: LoadChart;
  /** Whose it is when it is hired, and the first and last day of the hire, counted from today. */
  readonly hired?: { readonly owner: string; readonly from: number; readonly to: number };
  /** The inspection that keeps it in date in Great Britain, and how many months it holds. */
  readonly inspection: { readonly type: InspectionType; readonly months: number };
}

/** Examined every six months: what lifts, and what lifts or holds persons. */
export const THOROUGH_6 = { type: 'thoroughExamination', months: 6 } as const;

/** Examined every twelve months: lifting equipment. */
export const THOROUGH_12 = { type: 'thoroughExamination', months: 12 } as const;

/** Inspected every twelve months, as the firm has set itself. */
export const INTERIM_12 = { type: 'interimInspection', months: 12 } as const;

/** A marking of working load limit. */
export const wll = (value: string, unit: string) => ({ measure: 'workingLoadLimit' as const, value, unit });

/** A marking of lashing capacity. */
export const lc = (value: string, unit: string) => ({ measure: 'lashingCapacity' as const, value, unit });

/** A marking of rated capacity. */
export const capacity = (value: string, unit: string) => ({ measure: 'ratedCapacity' as const, value, unit });

/** A marking of rated persons. */
export const persons = (value: string) => ({ measure: 'ratedPersons' as const, value, unit: 'persons' });

/** What the lifters' heads of 62 mm bore hang on. */
export const BAR = { barDiameterMm: '60' };
