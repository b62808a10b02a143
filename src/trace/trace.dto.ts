import { ApiProperty } from '@nestjs/swagger';
import { LiftDayView } from '../custody/site-use.dto.js';
import { SEVERITIES, type Severity } from '../inspections/severity.js';
import { INSPECTION_TYPES, type InspectionType } from '../rules/gear/gear.js';

/** An inspection or check, as far as a trace names it. */
export class TracedRecordView {
  id!: number;
  @ApiProperty({ enum: INSPECTION_TYPES })
  type!: InspectionType;
  doneOn!: string;
  @ApiProperty({ enum: ['fit', 'unfit'] })
  outcome!: 'fit' | 'unfit';
  doneBy!: string;
  reportNumber!: string | null;
  /** True of a check by a clock in doubt: nobody knows its day, and it vouches for nothing. */
  clockDoubtful!: boolean;
}

/** The defect that is traced back. */
export class TracedDefectView {
  id!: number;
  itemId!: number;
  tag!: string;
  @ApiProperty({ enum: SEVERITIES })
  severity!: Severity;
  description!: string;
  /** The day of the report, at the item's store. */
  reportedOn!: string;
  reportedBy!: string | null;
}

/** A job that the item was out on between its last examination and the defect. */
export class TracedStayView {
  jobId!: number;
  jobReference!: string;
  jobName!: string;
  site!: string;
  from!: string;
  /** The day it came back; absent while it has not. */
  through?: string;
  @ApiProperty({ enum: ['out', 'back', 'missing'] })
  state!: 'out' | 'back' | 'missing';
  handedOutBy!: string | null;
  broughtBackBy!: string | null;
  returnRemarks!: string | null;
  /** Whether any of its days came on or after the last inspection or check passed: nobody vouches for those. */
  sinceLastGood!: boolean;
  /** The checks and inspections of its days. */
  records!: TracedRecordView[];
  /** The lifts of its days, no later than the defect. */
  liftDays!: LiftDayView[];
}

/** What lies between a defect and the last time that the item was found good. */
export class DefectTraceView {
  defect!: TracedDefectView;
  /** The last inspection or check of any type that it passed before the defect. */
  lastGood!: TracedRecordView | null;
  /** The last one by an examiner that it passed before the defect: the trace begins there, or with the first job. */
  lastExamined!: TracedRecordView | null;
  stays!: TracedStayView[];
  /** Lifts counted for it in all these days, and in those from the last good inspection or check on. */
  lifts!: number;
  liftsSinceLastGood!: number;
}
