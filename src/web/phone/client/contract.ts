import type { CheckAnswer, CheckPoint } from '../../../rules/checks/checklist.js';
import type { Currency } from '../../../rules/due/due-date.js';
import type { Condition } from '../../../rules/gear/gear.js';

/** Who is signed in, as `GET /api/phone/me` says. */
export interface Me {
  readonly id: number;
  readonly name: string;
}

/** A job that someone may check gear for, in `GET /api/phone/jobs`. */
export interface PhoneJob {
  readonly id: number;
  readonly reference: string;
  readonly name: string;
  readonly site: string;
  readonly out: number;
  readonly reserved: number;
}

/** An item of the job. */
export interface PhoneItem {
  readonly id: number;
  readonly tag: string;
  readonly serial: string | null;
  readonly maker: string;
  readonly kind: string;
  readonly condition: Condition;
  readonly currency: Currency;
  /** How it stands, in words. */
  readonly standing: string;
  /** How it stands with its check of the day of the bundle. */
  readonly check: { readonly state: 'checked' | 'failed' | 'unchecked'; readonly checkedAt?: string };
}

/** A kind of gear in the bundle, and what to look at. */
export interface PhoneKind {
  readonly kind: string;
  readonly name: string;
  /** Not in what an older page has kept. */
  readonly plural?: string;
  readonly points: readonly CheckPoint[];
  /** Who sets the limits, by name. Not in what an older page has kept. */
  readonly sources?: readonly { readonly key: string; readonly title: string }[];
}

/** Everything that the phone needs of one job while there is no signal: `GET /api/phone/jobs/:id`. */
export interface PhoneBundle {
  readonly job: PhoneJob;
  /** The day at the site that the checks count for. */
  readonly today: string;
  readonly timeZone: string;
  readonly items: readonly PhoneItem[];
  readonly checklists: readonly PhoneKind[];
}

/** What `POST /api/items/:id/checks` takes. */
export interface CheckBody {
  readonly jobId: number;
  readonly checkedAt: string;
  readonly offsetMinutes: number;
  readonly answers: readonly CheckAnswer[];
}

/** What the one who made the check could not know. */
export interface CheckConflict {
  readonly code: 'already_quarantined' | 'under_repair' | 'job_cancelled' | 'left_job' | 'not_on_job';
  readonly at?: string;
  readonly by?: string;
}

/** What it answers. */
export interface CheckReceipt {
  readonly inspectionId: number;
  readonly itemCondition: Condition;
  /** The defects that failed points left. */
  readonly defects: readonly { readonly id: number; readonly point: string }[];
  readonly clockDoubtful: boolean;
  readonly conflict?: CheckConflict;
}
