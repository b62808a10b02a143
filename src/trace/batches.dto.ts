import { AffectedJobView } from '../inspections/inspections.dto.js';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { ItemRowView } from '../register/register.dto.js';

const MAKER = { most: 80, what: 'the maker of the batch' };

/** Whose batch it is: two makers may use the same number. */
export class BatchQueryDto {
  @MayBeLeftOut()
  @PlainText(MAKER)
  maker?: string;
}

/** Why a whole batch is taken out of service. */
export class BatchQuarantineDto {
  @PlainText(MAKER)
  maker!: string;

  @PlainText({ most: 500, what: 'why', lines: true })
  reason!: string;
}

/** All items of a maker's batch. */
export class BatchView {
  batch!: string;
  /** Null where several makers have a batch of that name: choose one. */
  maker!: string | null;
  makers!: string[];
  items!: ItemRowView[];
}

/** What taking a batch out of service did. */
export class BatchOutcomeView {
  /** Tags of what went into quarantine. */
  quarantined!: string[];
  /** Tags of what was out of service already, and stays as it was. */
  alreadyOut!: string[];
  scrapped!: string[];
  affectedJobs!: AffectedJobView[];
}
