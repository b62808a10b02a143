import { ApiProperty } from '@nestjs/swagger';
import { SEVERITIES, type Severity } from '../inspections/severity.js';
import type { Condition } from '../rules/gear/gear.js';

/** An open defect of an item that waits. */
export class WaitingDefectView {
  id!: number;
  @ApiProperty({ enum: SEVERITIES })
  severity!: Severity;
  description!: string;
  lastDayOfUse!: string | null;
}

/** A job that counts on an item that waits. */
export class MissingJobView {
  jobId!: number;
  reference!: string;
  from!: string;
  to!: string;
  /** True while the item is out on it. */
  out!: boolean;
}

/** An item in quarantine or under repair, and what it waits for. */
export class WaitingItemView {
  itemId!: number;
  tag!: string;
  kind!: string;
  maker!: string;
  batch!: string | null;
  storeId!: number;
  storeName!: string;
  @ApiProperty({ enum: ['quarantined', 'underRepair'] })
  condition!: Condition;
  since!: string | null;
  reason!: string | null;
  /** Who reported it and therefore may not release it; null for Tackleroom itself. */
  reportedBy!: string | null;
  /** The competent persons who may examine and release it: all but those who reported it or a danger on it. */
  mayExamine!: string[];
  /** Whether the one who asks is among them. */
  youMayExamine!: boolean;
  openDefects!: WaitingDefectView[];
  jobs!: MissingJobView[];
}
