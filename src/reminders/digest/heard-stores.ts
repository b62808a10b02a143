import { hearersOf } from '../../rules/reminders/addressees.js';
import type { DigestChoice } from '../../rules/reminders/digest-choice.js';
import { isToldOfDue, type MailPerson } from '../preferences/mail-person.js';

/** A store that a person is told of. */
export interface HeardStore {
  readonly storeId: number;
  readonly digest: Exclude<DigestChoice, 'none'>;
  /** True where nobody chose to hear of the store, so that its overdue gear is told to all managers. */
  readonly byDefault: boolean;
}

/** The stores that each person is told of by digest, by number; people who are told of none are left out. */
export function heardStores(
  people: readonly MailPerson[],
  storeIds: readonly number[],
): ReadonlyMap<number, readonly HeardStore[]> {
  const inOrder = [...storeIds].sort((a, b) => a - b);
  const hearers = new Map(inOrder.map((id) => [id, hearersOf(id, people)]));
  const heard = people
    .filter(({ active, hasAddress }) => active && hasAddress)
    .map((person) => {
      const stores = inOrder.flatMap((storeId): HeardStore[] => {
        const digest = chosen(person, storeId);
        if (digest !== 'none') return [{ storeId, digest, byDefault: false }];
        const { byDefault = false, personIds = [] } = hearers.get(storeId) ?? {};
        return byDefault && personIds.includes(person.personId)
          ? [{ storeId, digest: 'overdueOnly', byDefault }]
          : [];
      });
      return [person.personId, stores] as const;
    });
  return new Map(heard.filter(([, stores]) => stores.length > 0));
}

function chosen({ roles, digest, storeIds }: MailPerson, storeId: number): DigestChoice {
  return isToldOfDue(roles) && (storeIds === null || storeIds.includes(storeId)) ? digest : 'none';
}
