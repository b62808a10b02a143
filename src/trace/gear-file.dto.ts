import { ApiProperty } from '@nestjs/swagger';
import { LiftDayView } from '../custody/site-use.dto.js';
import { SEVERITIES, type Severity } from '../inspections/severity.js';
import { MarkingDto } from '../register/register.dto.js';
import { EVENT_TYPES, type EventType } from '../rules/gear/gear.js';
import { TracedRecordView } from './trace.dto.js';

/** A defect that was reported while the item was on the job. */
export class FiledDefectView {
  id!: number;
  @ApiProperty({ enum: SEVERITIES })
  severity!: Severity;
  description!: string;
  reportedOn!: string;
}

/** Something that happened to the item on the job. */
export class FiledEventView {
  @ApiProperty({ enum: EVENT_TYPES })
  type!: EventType;
  happenedOn!: string;
  remarks!: string;
}

/** One item that was out on the job. */
export class FiledItemView {
  itemId!: number;
  tag!: string;
  kind!: string;
  maker!: string;
  serial!: string | null;
  batch!: string | null;
  markings!: MarkingDto[];
  storeName!: string;
  lineLabel!: string;
  from!: string;
  /** The day it came back; absent while it has not. */
  through?: string;
  @ApiProperty({ enum: ['out', 'back', 'missing'] })
  state!: 'out' | 'back' | 'missing';
  returnRemarks!: string | null;
  /** The last inspection of each type before it went out, and every one while it was away. */
  inspections!: TracedRecordView[];
  checks!: TracedRecordView[];
  defects!: FiledDefectView[];
  events!: FiledEventView[];
}

/** Everything on record about the gear of a job. */
export class GearFileView {
  jobId!: number;
  reference!: string;
  name!: string;
  site!: string;
  loadOutDay!: string;
  backDay!: string;
  storeName!: string;
  cancelled!: boolean;
  items!: FiledItemView[];
  lifts!: LiftDayView[];
}
