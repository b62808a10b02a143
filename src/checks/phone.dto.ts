import { ApiProperty } from '@nestjs/swagger';
import { TagText } from '../http/tag-text.js';
import { CURRENCIES } from '../register/register-search.dto.js';
import type { CheckPoint } from '../rules/checks/checklist.js';
import type { Currency } from '../rules/due/due-date.js';
import { CONDITIONS, type Condition } from '../rules/gear/gear.js';
import { CoveredItemView } from './coverage.dto.js';

/** Which tag was read or typed. */
export class TagQueryDto {
  @TagText({ most: 60, what: 'the tag' })
  tag!: string;
}

/** A job as the phone lists it. */
export class PhoneJobView {
  id!: number;
  reference!: string;
  name!: string;
  site!: string;
  loadOutDay!: string;
  backDay!: string;
  storeName!: string;
  /** Items out on it, and items reserved for it. */
  out!: number;
  reserved!: number;
}

/** Who sets a limit, by the name that a person knows it by. */
export class LimitSourceView {
  key!: string;
  title!: string;
}

/** What to look at on one kind of gear. */
export class ChecklistView {
  kind!: string;
  name!: string;
  plural!: string;
  @ApiProperty({
    type: [Object],
    description: 'Each point: key, look, failsWhen, severity, figures, criteria, source.',
  })
  points!: readonly CheckPoint[];
  /** The sources of the limits that measured figures are held against. */
  sources!: LimitSourceView[];
}

/** An item as the phone has it without a network. */
export class PhoneItemView {
  id!: number;
  tag!: string;
  serial!: string | null;
  maker!: string;
  kind!: string;
  lineKey!: string;
  lineLabel!: string;
  /** `out` on the job, or still `reserved` in the store. */
  held!: string;
  @ApiProperty({ enum: CONDITIONS })
  condition!: Condition;
  /** How it stands with its examination; out of date or never examined may not be used. */
  @ApiProperty({ enum: CURRENCIES })
  currency!: Currency;
  /** Where it stands, in words: 'in date, examination due 3 May 2027', or 'quarantined'. */
  standing!: string;
  /** Its check of today. */
  check!: CoveredItemView;
}

/** All that the phone needs for the checks of a job while it has no network. */
export class PhoneBundleView {
  job!: PhoneJobView;
  /** Today at the job's store, and the moment the bundle was made. */
  today!: string;
  madeAt!: string;
  timeZone!: string;
  @ApiProperty({ type: [String], description: 'The units that figures may be entered in.' })
  units!: readonly string[];
  checklists!: ChecklistView[];
  items!: PhoneItemView[];
}

/** An item that a tag may mean. */
export class TaggedItemView {
  id!: number;
  tag!: string;
  /** True when it carries exactly this tag, but for case, spaces and hyphens. */
  exact!: boolean;
  serial!: string | null;
  maker!: string;
  kind!: string;
  kindName!: string;
  storeName!: string;
  @ApiProperty({ enum: CONDITIONS })
  condition!: Condition;
}

/** What a tag means. */
export class TagAnswerView {
  /** The item, where one carries exactly this tag and no other reads alike; null otherwise: then a person chooses. */
  match!: TaggedItemView | null;
  /** Every item whose tag reads like it, O like 0 and I like 1. */
  candidates!: TaggedItemView[];
}
