import type { Hearer } from '../../rules/reminders/addressees.js';
import type { StoreVisit } from './store-visits.js';
import type { TellingStore, ToldEntry } from './told-entries.js';

/** What a digest is made from. */
export interface DigestFacts {
  /** What the person is told of, in the order of the diary. */
  readonly told: readonly ToldEntry[];
  /** The visits to the stores told of: each clears also what the person is not told of today. */
  readonly visits: readonly StoreVisit[];
  readonly stores: readonly TellingStore[];
  readonly person: Pick<Hearer, 'roles'> & { readonly name: string };
  /** The name of a kind as people read it. */
  readonly kindName: (kind: string) => string;
  /** The address of the server, without a slash at its end. */
  readonly address: string;
}

/** True of those who come to examine and do not run the store. */
export function onlyExamines({ roles }: Pick<Hearer, 'roles'>): boolean {
  return roles.includes('competentPerson') && !roles.includes('storeman') && !roles.includes('manager');
}
