import type { Day } from '../calendar/day.js';
import type { LoadChart } from '../hosting/load-chart.js';
import type { Marking } from '../quantities/marking.js';

/** What a gear line asks of an item. A lashing capacity never serves a lifting duty. */
export const DUTIES = ['lifting', 'lashing', 'carrying', 'steadying', 'fallArrest', 'hosting'] as const;
export type Duty = (typeof DUTIES)[number];

/** Whether the item may be used at all, as decided by people. Never mixed with currency (dates) or custody (where it is). */
export const CONDITIONS = ['inService', 'quarantined', 'underRepair', 'scrapped'] as const;
export type Condition = (typeof CONDITIONS)[number];

export const INSPECTION_TYPES = [
  'preUseCheck',
  'interimInspection',
  'thoroughExamination',
  'proofLoadTest',
] as const;
export type InspectionType = (typeof INSPECTION_TYPES)[number];

/** Things that happen to an item and call for a fresh examination before it is used again. */
export const EVENT_TYPES = ['dropped', 'overloaded', 'altered', 'repaired', 'longIdle'] as const;
export type EventType = (typeof EVENT_TYPES)[number];

/** The latest inspection of one type that has not been superseded. */
export interface InspectionRecord {
  readonly type: InspectionType;
  readonly doneOn: Day;
  readonly outcome: 'fit' | 'unfit';
  /** The last day the examiner allows before the next one, where they named a day. It can only bring the due date forward. */
  readonly nextDueOn?: Day;
}

/** A house rule for one item: other months between inspections of one type. Lengthening needs `reference`, the scheme of examination drawn up by a competent person. */
export interface WrittenScheme {
  readonly type: InspectionType;
  readonly months: number;
  readonly reference?: string;
}

/** A promise of the item to a job. Days are inclusive. `late` means out past it and not yet back. */
export interface Commitment {
  readonly jobId: number;
  readonly jobReference: string;
  readonly from: Day;
  readonly to: Day;
  readonly late: boolean;
}

/** Something that happened to an item. */
export interface GearEvent {
  readonly type: EventType;
  readonly on: Day;
  /** Types of inspections that were passed on the very day and recorded after the event: a repair looked at when done. */
  readonly answeredBy?: readonly InspectionType[];
}

/** The lifts of a day on which an item was out: those of every job it was on. */
export interface DayLifts {
  readonly on: Day;
  readonly lifts: number;
}

/** One item as the rules see it: facts only, read fresh at every gate. */
export interface Gear {
  readonly itemId: number;
  readonly tag: string;
  readonly kind: string;
  readonly storeId: number;
  readonly storeName: string;
  readonly condition: Condition;
  readonly missing: boolean;
  readonly serialKnown: boolean;
  readonly labelLegible: boolean;
  readonly certificateOnFile: boolean;
  readonly markings: readonly Marking[];
  /** Measured attributes by name, in the unit the name ends in (`lengthM`, `barDiameterMm`, `jawMaximumMm`): exact decimal text. */
  readonly dimensions: Readonly<Record<string, string>>;
  /** Whose it is, for gear that is hired in, and the days of the hire, both included. */
  readonly owner?: string;
  readonly hire?: { readonly from?: Day; readonly to?: Day };
  /** What a host machine carries at which height and distance. */
  readonly loadChart?: LoadChart;
  readonly manufacturedOn?: Day;
  readonly firstUsedOn?: Day;
  /** The day of the maker's declaration of conformity, for gear bought new. */
  readonly declarationOn?: Day;
  readonly inspections: readonly InspectionRecord[];
  readonly events: readonly GearEvent[];
  /** Lifts by day, each day once; absent where none was ever counted. */
  readonly lifts?: readonly DayLifts[];
  /** The last day it is known to have been out on a job: today while it is out, absent when it never was. */
  readonly lastAwayOn?: Day;
  /** The earliest day named by an open defect that could become a danger: last day of use. */
  readonly defectDeadline?: Day;
  readonly writtenSchemes: readonly WrittenScheme[];
  readonly commitments: readonly Commitment[];
}
