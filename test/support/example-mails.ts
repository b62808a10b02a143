import type { DiaryEntry } from '../../src/reminders/diary/diary-entry.js';
import type { DigestFacts } from '../../src/reminders/digest/digest-facts.js';
import { storeVisits } from '../../src/reminders/digest/store-visits.js';
import type { TellingStore, ToldEntry } from '../../src/reminders/digest/told-entries.js';
import type { Covered } from '../../src/reminders/digest/told-stores.js';
import type { MailPerson } from '../../src/reminders/preferences/mail-person.js';
import type { UnfitBooking } from '../../src/reminders/urgent/unfit-booking.js';
import { addDays, toDay } from '../../src/rules/calendar/day.js';
import { DEFAULT_REMINDER_RULE } from '../../src/rules/reminders/reminder-rule.js';

/** A Monday. */
export const TODAY = toDay('2027-05-03');
export const ADDRESS = 'https://gear.example';

/** An item due in so many days, in date until then, unless said otherwise. */
export function diaryEntry(
  itemId: number,
  inDays: number,
  differences: Partial<DiaryEntry> = {},
): DiaryEntry {
  const dueOn = addDays(TODAY, inDays);
  return {
    itemId,
    tag: `PL-${itemId}`,
    kind: 'panelLifter',
    storeId: 1,
    storeName: 'North store',
    today: TODAY,
    dueOn,
    overdue: inDays < 0,
    reasons: [{ why: 'inspection', type: 'thoroughExamination', dueOn, source: 'x' }],
    who: 'competentPerson',
    jobs: [],
    stops: [],
    ...differences,
  };
}

/** An entry as it is told, for the first time unless said otherwise. */
export function told(entry: DiaryEntry, fresh = true): ToldEntry {
  const days = entry.overdue ? 1 : 7;
  return {
    entry,
    fresh,
    reminder: entry.overdue ? { kind: 'overdue', days } : { kind: 'lead', leadDays: 7, daysLeft: days },
  };
}

export function tellingStore(differences: Partial<TellingStore> = {}): TellingStore {
  return {
    storeId: 1,
    digest: 'daily',
    byDefault: false,
    today: TODAY,
    rule: DEFAULT_REMINDER_RULE,
    covered: toldThrough(-3),
    coveredAtWork: toldThrough(-3),
    ...differences,
  };
}

/** What a digest told at six of a morning in London. */
export function toldThrough(offset: number): Covered {
  const through = addDays(TODAY, offset);
  return { through, at: `${through}T05:00:00.000Z` };
}

/** A digest of these entries to a storeman, who is not told of those of the others that fall due as well. */
export function digestFacts(
  entries: readonly ToldEntry[],
  {
    others = [],
    ...differences
  }: Partial<Omit<DigestFacts, 'visits'>> & { others?: readonly DiaryEntry[] } = {},
): DigestFacts {
  const stores = differences.stores ?? [tellingStore()];
  const visits = storeVisits(
    [...entries.map(({ entry }) => entry), ...others],
    stores.map((store) => ({ ...store, timeZone: 'Europe/London' })),
  );
  return {
    told: entries,
    visits: [...visits.values()].flat(),
    stores,
    person: { name: 'Storeman One', roles: ['storeman'] },
    kindName: () => 'Panel lifter',
    address: ADDRESS,
    ...differences,
  };
}

export function mailPersonOf(personId: number, differences: Partial<MailPerson> = {}): MailPerson {
  return {
    personId,
    name: `Person ${personId}`,
    roles: ['storeman'],
    active: true,
    address: `person${personId}@yard.example`,
    hasAddress: true,
    digest: 'daily',
    urgent: true,
    storeIds: null,
    version: 1,
    ...differences,
  };
}

/** A lifter that is out on a job and has to be examined. */
export function unfitBooking(itemId: number, differences: Partial<UnfitBooking> = {}): UnfitBooking {
  return {
    jobId: 7,
    reference: 'LM-7',
    jobName: 'Harbour Hall',
    jobStoreId: 1,
    from: addDays(TODAY, -2),
    to: addDays(TODAY, 5),
    today: TODAY,
    out: true,
    itemId,
    tag: `PL-${itemId}`,
    kind: 'panelLifter',
    itemStoreId: 1,
    refusals: [{ code: 'quarantined', source: 'x' }],
    ...differences,
  };
}
