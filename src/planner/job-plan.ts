import type { UnmetPin } from '../rules/allocation/allocation.js';
import type { LineRemedies } from '../rules/allocation/remedy.js';
import type { Day } from '../rules/calendar/day.js';
import type { DueCaution } from '../rules/due/due-date.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import type { Refusal, RefusalCode } from '../rules/fitness/refusal.js';
import type { Gear } from '../rules/gear/gear.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { GearLine, Window } from '../rules/lines/need.js';
import type { Working } from '../rules/working.js';

/** An item that is promised to the job already. */
export interface HeldItem {
  readonly itemId: number;
  readonly lineKey: string;
  readonly state: 'reserved' | 'out' | 'back' | 'missing';
}

/** The storeman's word on one item. A pin never overrides a refusal. */
export interface ItemChoice {
  readonly itemId: number;
  readonly choice: 'pin' | 'exclude';
  readonly lineKey?: string;
}

/** Everything that a plan depends on. */
export interface PlanInput {
  readonly jobId: number;
  readonly storeId: number;
  readonly window: Window;
  readonly otherStores: boolean;
  readonly lines: readonly GearLine[];
  /** Every item of the kinds that the lines ask for. */
  readonly gear: readonly Gear[];
  readonly held: readonly HeldItem[];
  readonly choices: readonly ItemChoice[];
  readonly kinds: readonly KindDefinition[];
  /** The rules of the place where the site stands. */
  readonly scheme: SchemeDefinition;
  readonly today: Day;
}

/** An item put on a line, with what spoke for it. */
export interface ChosenItem {
  readonly itemId: number;
  readonly tag: string;
  readonly storeId: number;
  readonly storeName: string;
  /** True when it was promised to the job before. */
  readonly held: boolean;
  readonly pinned: boolean;
  /** Rating over need as decimal text; absent where the line asks for no rating. */
  readonly ratingRatio?: string;
  readonly dueOn?: Day;
  readonly cautions: readonly DueCaution[];
  readonly workings: readonly Working[];
}

/** An item of the line's kind that may not serve it, with every reason. */
export interface RefusedItem {
  readonly itemId: number;
  readonly tag: string;
  readonly storeName: string;
  readonly refusals: readonly Refusal[];
}

/** One gear line with the items it gets and the items it does not. */
export interface PlannedLine {
  readonly line: GearLine;
  /** Items that served the line and are back. */
  readonly served: number;
  readonly chosen: readonly ChosenItem[];
  /** In tag order, the first `SHOWN_REFUSED`. */
  readonly refused: readonly RefusedItem[];
  readonly refusedCount: number;
  /** How many items each reason concerns, the commonest first. */
  readonly reasons: readonly { readonly code: RefusalCode; readonly count: number }[];
  readonly missing: number;
  readonly remedies?: LineRemedies;
}

/** The planner's answer for one job. */
export interface JobPlan {
  readonly lines: readonly PlannedLine[];
  readonly unmetPins: readonly (UnmetPin & { readonly tag?: string })[];
  /** The chosen items by the store they come from, the job's own store first. */
  readonly transports: readonly {
    readonly storeId: number;
    readonly storeName: string;
    readonly tags: readonly string[];
  }[];
}

/** The most refused items that a line shows. The counts tell of the others. */
export const SHOWN_REFUSED = 50;
