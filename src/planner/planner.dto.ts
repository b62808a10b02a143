import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { CalculationProblemView, RefusalView, WorkingView } from '../http/rule-views.dto.js';
import type { UnmetPinReason } from '../rules/allocation/allocation.js';
import { REFUSAL_CODES, type RefusalCode } from '../rules/fitness/refusal.js';
import { DUTIES, type Duty } from '../rules/gear/gear.js';
import { SIZE_RULES, type SizeRule } from '../rules/lines/method.js';
import { MEASURES, type Measure } from '../rules/quantities/marking.js';
import type { HostingNeed } from '../rules/hosting/hosting-need.js';
import type { Remedy } from '../rules/allocation/remedy.js';

const NEED_UNITS = ['kg', 'N', 'persons'] as const;
const REMEDY_KINDS = ['liftExclusion', 'moveFromStore', 'examine', 'waitForReturn', 'hire'] as const;
const UNMET_REASONS = ['unknown_line', 'not_fit_for_line', 'line_full', 'pinned_to_another_line'] as const;

/** The least rating that one item of a line must carry. */
export class RatingNeedView {
  @ApiProperty({ enum: MEASURES })
  readonly measure!: Measure;
  /** Exact decimal text. */
  readonly value!: string;
  @ApiProperty({ enum: NEED_UNITS })
  readonly unit!: (typeof NEED_UNITS)[number];
}

/** A size that one item of a line must have. */
export class DimensionNeedView {
  readonly dimension!: string;
  @ApiProperty({ enum: SIZE_RULES })
  readonly rule!: SizeRule;
  /** Exact decimal text in the unit that the dimension's name ends in. */
  readonly value!: string;
  readonly source!: string;
}

/** What hangs on a host machine, how high and how far out. Exact decimal text; lengths are from the face of the carriage. */
export class HostingNeedView implements HostingNeed {
  readonly loadKg!: string;
  readonly attachmentMassKg!: string;
  readonly attachmentCentreMm!: string;
  readonly attachmentDepthMm!: string;
  readonly loadDepthMm!: string;
  readonly heightMm!: string;
  readonly reachMm?: string;
}

/** What a person changed of a line. */
export class LineChangeView {
  readonly reason!: string;
  readonly methodQuantity!: number;
}

/** One gear line of a job with the arithmetic behind it. */
export class GearLineView {
  readonly key!: string;
  readonly label!: string;
  readonly kind!: string;
  @ApiProperty({ enum: DUTIES })
  readonly duty!: Duty;
  readonly quantity!: number;
  readonly rating?: RatingNeedView;
  @ApiProperty({ type: [DimensionNeedView] })
  readonly dimensions!: readonly DimensionNeedView[];
  @ApiProperty({ type: [WorkingView] })
  readonly workings!: readonly WorkingView[];
  readonly hosting?: HostingNeedView;
  /** What keeps the needs from being worked out; nothing is fit for the line until it is settled. */
  @ApiPropertyOptional({ type: [CalculationProblemView] })
  readonly unsettled?: readonly CalculationProblemView[];
  readonly adjusted?: LineChangeView;
}

/** An item put on a line, with what spoke for it. */
export class ChosenItemView {
  readonly itemId!: number;
  readonly tag!: string;
  readonly storeId!: number;
  readonly storeName!: string;
  /** True when it was promised to the job before. */
  readonly held!: boolean;
  readonly pinned!: boolean;
  /** Rating over need as decimal text; absent where the line asks for no rating. */
  readonly ratingRatio?: string;
  /** The last day it is in date. */
  readonly dueOn?: string;
  /** What to know though it is no refusal. */
  @ApiProperty({ type: [String] })
  readonly cautions!: readonly string[];
  @ApiProperty({ type: [WorkingView] })
  readonly workings!: readonly WorkingView[];
}

/** An item of the line's kind that may not serve it, with every reason. */
export class RefusedItemView {
  readonly itemId!: number;
  readonly tag!: string;
  readonly storeName!: string;
  @ApiProperty({ type: [RefusalView] })
  readonly refusals!: readonly RefusalView[];
}

/** How many items one reason concerns. */
export class ReasonCountView {
  @ApiProperty({ enum: REFUSAL_CODES })
  readonly code!: RefusalCode;
  readonly count!: number;
}

/** An item that a remedy concerns. */
export class RemedyItemView {
  readonly itemId!: number;
  readonly tag!: string;
  /** The inspections it needs. */
  @ApiPropertyOptional({ type: [String] })
  readonly types?: readonly string[];
  /** The last day of the promises that hold it. */
  readonly backOn?: string;
  /** The first day it could be loaded out. */
  readonly loadOutFrom?: string;
}

/** The store that gear would come from. */
export class RemedyStoreView {
  readonly id!: number;
  readonly name!: string;
}

/** One way to close some of a line's gap. Which members are present depends on the kind. */
export class RemedyView {
  @ApiProperty({ enum: REMEDY_KINDS })
  readonly kind!: Remedy['kind'];
  readonly lineKey!: string;
  @ApiProperty({ type: [RemedyItemView] })
  readonly items!: readonly RemedyItemView[];
  /** Units of the line that it closes. */
  readonly covers!: number;
  readonly store?: RemedyStoreView;
  /** Examine on or before this day. */
  readonly by?: string;
  /** Load out no earlier than this day. */
  readonly loadOutFrom?: string;
  /** What is hired must be rated at least this. */
  readonly rating?: RatingNeedView;
}

/** What closes the gap of a short line. */
export class LineRemediesView {
  readonly lineKey!: string;
  readonly missing!: number;
  /** Least effort first; together they cover what is missing. */
  @ApiProperty({ type: [RemedyView] })
  readonly remedies!: readonly RemedyView[];
  /** Hiring every missing unit instead, where own gear closes the gap in part only. */
  readonly wholeHire?: RemedyView;
}

/** One gear line with the items it gets and the items it does not. */
export class PlannedLineView {
  readonly line!: GearLineView;
  /** Items that served the line and are back. */
  readonly served!: number;
  @ApiProperty({ type: [ChosenItemView] })
  readonly chosen!: readonly ChosenItemView[];
  /** The first 50 by tag. */
  @ApiProperty({ type: [RefusedItemView] })
  readonly refused!: readonly RefusedItemView[];
  readonly refusedCount!: number;
  /** The commonest reason first. */
  @ApiProperty({ type: [ReasonCountView] })
  readonly reasons!: readonly ReasonCountView[];
  readonly missing!: number;
  readonly remedies?: LineRemediesView;
}

/** What comes from one store. */
export class TransportView {
  readonly storeId!: number;
  readonly storeName!: string;
  @ApiProperty({ type: [String] })
  readonly tags!: readonly string[];
}

/** A pin that could not be honoured, and why. */
export class UnmetPinView {
  readonly itemId!: number;
  readonly lineKey!: string;
  readonly tag?: string;
  @ApiProperty({ enum: UNMET_REASONS })
  readonly reason!: UnmetPinReason;
}

/** The planner's answer for one job, made from facts as they are now. A planning aid: it replaces no lift plan. */
export class ProposalView {
  readonly jobId!: number;
  readonly jobVersion!: number;
  /** The day it was made on, at the job's store. */
  readonly today!: string;
  /** Each gear line with its working, the items chosen, the items refused with every reason, and remedies where it is short. */
  @ApiProperty({ type: [PlannedLineView] })
  readonly lines!: readonly PlannedLineView[];
  /** The chosen tags by the store they come from. */
  @ApiProperty({ type: [TransportView] })
  readonly transports!: readonly TransportView[];
  @ApiProperty({ type: [UnmetPinView] })
  readonly unmetPins!: readonly UnmetPinView[];
  /** How the masses of the ruling panels were worked out. */
  @ApiProperty({ type: [WorkingView] })
  readonly massWorkings!: readonly WorkingView[];
}
