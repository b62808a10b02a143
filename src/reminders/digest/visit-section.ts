import type { Day } from '../../rules/calendar/day.js';
import { nearDay } from '../../web/sentences/due-reason.js';
import { count, listed } from '../../web/sentences/words.js';
import type { DiaryEntry } from '../diary/diary-entry.js';
import { cutShort, type MailSection } from '../mails/mail-content.js';
import { digestEntry } from './digest-entry.js';
import { onlyExamines, type DigestFacts } from './digest-facts.js';
import type { StoreVisit } from './store-visits.js';

/** A visit as a section of a digest, and the items told of that it clears. */
interface VisitSection {
  readonly on: Day;
  readonly itemIds: readonly number[];
  readonly section: MailSection;
}

/** What a visit clears of the gear that falls due; nothing when it clears none that is told of today. */
export function visitSection(
  visit: StoreVisit,
  due: readonly DiaryEntry[],
  facts: DigestFacts,
): VisitSection[] {
  const served = new Set(visit.itemIds);
  const cleared = due.filter(({ itemId }) => served.has(itemId));
  if (cleared.length === 0) return [];
  const entries = cleared.map((entry) => digestEntry(entry, facts));
  const section = {
    title: title(visit, cleared, facts),
    grave: false,
    lead: lead(visit, cleared, facts),
    ...cutShort(entries, `${facts.address}/diary?storeId=${visit.storeId}`),
  };
  return [{ on: visit.on, itemIds: cleared.map(({ itemId }) => itemId), section }];
}

function title({ on, who }: StoreVisit, cleared: readonly DiaryEntry[], { person }: DigestFacts): string {
  const [{ storeName = '', today = on } = {}] = cleared;
  const isLate = isAfterDue(on, cleared);
  const examines = onlyExamines(person);
  const when =
    on > today
      ? `${isLate ? 'On' : 'By'} ${nearDay(on, today)} at ${storeName}`
      : `${examines ? 'Your next' : 'Next'} visit to ${storeName}`;
  if (examines) return when;
  return `${when}: ${who === 'competentPerson' ? 'a competent person' : 'an inspector'}`;
}

function lead(
  { on, itemIds, saves }: StoreVisit,
  cleared: readonly DiaryEntry[],
  { person }: DigestFacts,
): string {
  const examines = onlyExamines(person);
  const saved =
    saves.length > 0
      ? ` and ${examines ? 'save' : 'saves'} ${saves.length === 1 ? 'job' : 'jobs'} ${listed(saves)}`
      : '';
  const items = count(itemIds.length, 'item', 'items');
  const visit = `One visit ${examines ? 'of yours would clear' : 'clears'} ${items}${saved}`;
  const until = isAfterDue(on, cleared) ? ' Until then nobody may use what has passed its day.' : '';
  return `${visit}${othersWords(itemIds.length, cleared.length)}.${until}`;
}

function othersWords(all: number, named: number): string {
  if (all === named) return '';
  return `: ${named === 1 ? 'this one' : `these ${named}`}, and ${all - named} more in the diary`;
}

/** No visit comes in time for gear that comes back only after the last working day before its due day. */
function isAfterDue(on: Day, cleared: readonly DiaryEntry[]): boolean {
  return cleared.some(({ dueOn }) => dueOn < on);
}
