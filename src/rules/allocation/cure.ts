import { addDays, addMonths, type Day } from '../calendar/day.js';
import type { Refusal, RefusalCode } from '../fitness/refusal.js';
import { INSPECTION_TYPES, type InspectionType } from '../gear/gear.js';
import type { Window } from '../lines/need.js';
import type { ExamineItem, RefusedCandidate, RemedyItem, ReturningItem, Store } from './remedy.js';

/** The one thing to do that makes a refused item fit, so far as its refusals tell. */
export type Cure =
  | { readonly kind: 'liftExclusion'; readonly item: RemedyItem }
  | { readonly kind: 'moveFromStore'; readonly item: RemedyItem; readonly store: Store }
  | { readonly kind: 'examine'; readonly item: ExamineItem }
  | { readonly kind: 'waitForReturn'; readonly item: ReturningItem };

/** The days that decide whether a cure comes in time. */
export interface CureDays {
  readonly window: Window;
  readonly today: Day;
}

/**
 * What an examination alone puts right. Not here on purpose: `quarantined`, `failed_examination` and
 * `defect_deadline`, where something was found wrong and an examination may well say so again; `label_illegible` and
 * `serial_unknown`, which need marking; `no_load_chart`,
 * `attachment_not_covered` and `outside_hire`, which need papers; and the end of a service life, which no examination extends.
 */
const CURED_BY_EXAMINATION: ReadonlySet<RefusalCode> = new Set<RefusalCode>([
  'never_examined',
  'out_of_date',
  'due_during_job',
  'examine_after_event',
  'lifts_used_up',
  'certificate_missing',
]);

const CURED_BY_RETURN: ReadonlySet<RefusalCode> = new Set<RefusalCode>([
  'promised_elsewhere',
  'not_back_yet',
]);

/**
 * The single cure of an item's refusals on one line, or undefined: nothing helps, or it would take cures of two sorts.
 * A cure is a proposal; the item is fit only when it is judged again and passes.
 */
export function cureOf(
  candidate: RefusedCandidate,
  refusals: readonly Refusal[],
  days: CureDays,
): Cure | undefined {
  const item = { itemId: candidate.itemId, tag: candidate.tag };
  const all = (curable: (code: RefusalCode) => boolean): boolean =>
    refusals.every(({ code }) => curable(code));
  if (refusals.length === 0) return undefined;
  if (all((code) => code === 'excluded_by_storeman')) return { kind: 'liftExclusion', item };
  if (all((code) => code === 'at_another_store')) {
    return { kind: 'moveFromStore', item, store: { id: candidate.storeId, name: candidate.storeName } };
  }
  if (all((code) => CURED_BY_EXAMINATION.has(code))) return examination(candidate, refusals, days);
  if (all((code) => CURED_BY_RETURN.has(code))) return returning(item, refusals, days);
  return undefined;
}

/** The day by which to examine: the day before load-out, or today if that has passed. */
export function examineBy({ window, today }: CureDays): Day {
  return later(addDays(window.from, -1), today);
}

function examination(
  candidate: RefusedCandidate,
  refusals: readonly Refusal[],
  days: CureDays,
): Cure | undefined {
  const asked = new Set(refusals.map(({ subject }) => inspectionType(subject)));
  const types = INSPECTION_TYPES.filter((type) => asked.has(type));
  const by = examineBy(days);
  const lasts = types.every((type) => {
    const months = candidate.intervalMonths?.[type];
    return months === undefined || addMonths(by, months) >= days.window.to;
  });
  if (!lasts) return undefined;
  return { kind: 'examine', item: { itemId: candidate.itemId, tag: candidate.tag, types } };
}

/** The type a refusal names; a thorough examination where it names an event or nothing, as that is the fullest look. */
function inspectionType(subject: string | undefined): InspectionType {
  return INSPECTION_TYPES.find((type) => type === subject) ?? 'thoroughExamination';
}

/** An item that is late already is back tomorrow at the earliest. Without a back day there is nothing to wait for. */
function returning(
  item: RemedyItem,
  refusals: readonly Refusal[],
  { window, today }: CureDays,
): Cure | undefined {
  let backOn: Day | undefined;
  for (const { on } of refusals) {
    if (on === undefined) return undefined;
    backOn = backOn === undefined ? on : later(backOn, on);
  }
  if (backOn === undefined) return undefined;
  const loadOutFrom = later(window.from, addDays(later(backOn, today), 1));
  return { kind: 'waitForReturn', item: { ...item, backOn, loadOutFrom } };
}

function later(one: Day, other: Day): Day {
  return one < other ? other : one;
}
