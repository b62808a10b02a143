import type { MailPerson } from '../preferences/mail-person.js';

/** What is told at once: a danger that was found, or booked gear that is not fit any more. */
export type UrgentKind = 'danger' | 'booking';

/**
 * Who is told at once of something at these stores: those who keep or run them and chose to hear, and of a danger
 * everybody else who did. Somebody must hear: where no storeman or manager chose to, every manager does who has an
 * address, whatever they chose, and where there is none, every storeman of the stores. Nobody only when none of them
 * can be reached.
 */
export function urgentHearers(
  people: readonly MailPerson[],
  { matter, storeIds }: { matter: UrgentKind; storeIds: readonly number[] },
): ReadonlySet<number> {
  const reachable = people.filter(({ active, hasAddress }) => active && hasAddress);
  const hearing = reachable.filter((person) => hearsOf(person, storeIds));
  const chose = hearing.filter(({ urgent }) => urgent);
  const inCharge = chose.filter(isInCharge);
  const told = inCharge.length > 0 ? inCharge : byDefault(reachable, hearing);
  const others = matter === 'danger' ? chose : [];
  return new Set([...told, ...others].map(({ personId }) => personId));
}

function byDefault(reachable: readonly MailPerson[], hearing: readonly MailPerson[]): readonly MailPerson[] {
  const managers = reachable.filter(({ roles }) => roles.includes('manager'));
  return managers.length > 0 ? managers : hearing.filter(isInCharge);
}

function isInCharge({ roles }: MailPerson): boolean {
  return roles.includes('storeman') || roles.includes('manager');
}

function hearsOf({ storeIds: chosen }: MailPerson, storeIds: readonly number[]): boolean {
  return chosen === null || storeIds.some((id) => chosen.includes(id));
}
