import type { StateKind } from '../../components/state-mark.js';
import type { PhoneItem } from './contract.js';
import type { SavedCheck } from './store.js';
import { dayOf, timeOf } from './time.js';

/** How an item stands on this phone: what the server said last, and what was checked here since. */
export interface Standing {
  readonly state: StateKind;
  readonly word: string;
  /** Why it may not be used, or what was found; empty while nothing is wrong. */
  readonly why: readonly string[];
  readonly mayBeChecked: boolean;
}

/** What the standing is worked out from. */
export interface StandingInput {
  readonly item: PhoneItem;
  /** The day and the zone that the checks of the bundle count for, and when the bundle was asked for. */
  readonly bundleDay: string;
  readonly timeZone: string;
  readonly fetchedAt: string;
  /** The checks of the item that are saved on this phone, oldest first. */
  readonly checks: readonly SavedCheck[];
  readonly now: number;
}

/** Works out how an item stands. In doubt it may not be used. */
export function standingOf(input: StandingInput): Standing {
  const { item, checks, fetchedAt } = input;
  const block = checks.findLast((check) => check.outcome === 'unfit' && !isSettled(check, item, fetchedAt));
  if (block) {
    const found = `Found on this phone at ${timeOf(block.body.checkedAt)}.`;
    return {
      state: 'refused',
      word: 'failed: do not use',
      why: [...block.failed, found],
      mayBeChecked: false,
    };
  }
  if (!mayBeUsed(item))
    return { state: 'refused', word: 'do not use', why: [`It is ${item.standing}.`], mayBeChecked: false };
  return { ...checkedToday(input), mayBeChecked: true };
}

function mayBeUsed({ condition, currency }: PhoneItem): boolean {
  return condition === 'inService' && currency !== 'outOfDate' && currency !== 'neverExamined';
}

/** A block ends only when the server has the check and has said since then that the item may be used. */
function isSettled({ sending, sentAt }: SavedCheck, item: PhoneItem, fetchedAt: string): boolean {
  return sending === 'sent' && sentAt !== undefined && sentAt < fetchedAt && mayBeUsed(item);
}

function checkedToday({ item, bundleDay, timeZone, checks, now, fetchedAt }: StandingInput) {
  const today = dayOf(now, timeZone);
  const here = checks.findLast(
    (check) => dayOf(check.body.checkedAt, timeZone) === today && check.receipt?.clockDoubtful !== true,
  );
  const isNewer = here !== undefined && !(here.sending === 'sent' && (here.sentAt ?? '') < fetchedAt);
  const { state, checkedAt } = isNewer
    ? { state: 'checked', checkedAt: here.body.checkedAt }
    : bundleDay === today
      ? item.check
      : { state: 'unchecked', checkedAt: undefined };
  if (state === 'checked')
    return { state: 'ok', word: `passed${checkedAt ? ` ${timeOf(checkedAt)}` : ''}`, why: [] } as const;
  if (state === 'failed')
    return { state: 'due', word: 'fault noted: check again', why: here?.failed ?? [] } as const;
  return { state: 'plain', word: 'to check', why: [] } as const;
}
