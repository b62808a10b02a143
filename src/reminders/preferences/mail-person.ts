import type { PersonView } from '../../people/people.dto.js';
import type { Role } from '../../people/role.js';
import type { Hearer } from '../../rules/reminders/addressees.js';
import type { MailChoiceEntity } from './mail-choice.entity.js';

/** A person with what they chose to hear by mail; version 0 is that of someone who has not chosen yet. */
export interface MailPerson extends Hearer {
  readonly name: string;
  readonly roles: readonly Role[];
  readonly address: string | null;
  /** Whether dangers and booked gear that turned unfit are told at once. */
  readonly urgent: boolean;
  readonly version: number;
}

/** An account with its choice; without one, what its roles suggest, and no address to send it to. */
export function mailPerson(person: PersonView, choice: MailChoiceEntity | undefined): MailPerson {
  const { address, digest, urgent, storeIds, version } = choice ?? {
    address: null,
    digest: isToldOfDue(person.roles) ? ('daily' as const) : ('none' as const),
    urgent: isInCharge(person.roles),
    storeIds: null,
    version: 0,
  };
  const { id: personId, name, roles, active } = person;
  return {
    personId,
    name,
    roles,
    active,
    address,
    hasAddress: address !== null,
    digest,
    urgent,
    storeIds,
    version,
  };
}

/** Whether people of these roles are told what falls due: those who can examine it, or see to it that someone does. */
export function isToldOfDue(roles: readonly Role[]): boolean {
  return roles.some((role) => role !== 'crew');
}

/** Whether people of these roles keep or run the stores: booked gear that is no longer fit is for them to mend. */
export function isInCharge(roles: readonly Role[]): boolean {
  return roles.includes('storeman') || roles.includes('manager');
}

/** Whether a person is told what falls due, but has not yet said where to, or that they want none. */
export function wantsAddress({ roles, address, version }: MailPerson): boolean {
  return isToldOfDue(roles) && address === null && version === 0;
}
