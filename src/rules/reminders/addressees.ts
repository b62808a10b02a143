import type { DigestChoice } from './digest-choice.js';

/** A person as far as it matters for who is told what. */
export interface Hearer {
  readonly personId: number;
  readonly roles: readonly string[];
  /** False once the account is closed. */
  readonly active: boolean;
  readonly hasAddress: boolean;
  readonly digest: DigestChoice;
  /** The stores the person wants to hear of; null for all, also those still to come. */
  readonly storeIds: readonly number[] | null;
}

/** Those who can see to it that overdue gear is examined or put away. */
const ANSWERING_ROLES: readonly string[] = ['storeman', 'manager', 'competentPerson'];

/**
 * Who is told of the overdue gear of a store. Where nobody hears of it by choice, every manager does who can be
 * reached, whatever they chose (`byDefault`). An empty list then says that nobody can be told at all.
 */
export function hearersOf(
  storeId: number,
  hearers: readonly Hearer[],
): { readonly personIds: readonly number[]; readonly byDefault: boolean } {
  const byChoice = hearers.filter((hearer) => hearsByChoice(hearer, storeId));
  const told =
    byChoice.length > 0
      ? byChoice
      : hearers.filter((hearer) => canBeReached(hearer) && hearer.roles.includes('manager'));
  return { personIds: told.map(({ personId }) => personId), byDefault: byChoice.length === 0 };
}

/** Those of the stores whose overdue gear nobody hears of by choice, in the order given. */
export function storesUnheard(storeIds: readonly number[], hearers: readonly Hearer[]): readonly number[] {
  return storeIds.filter((storeId) => !hearers.some((hearer) => hearsByChoice(hearer, storeId)));
}

/**
 * Those of the stores of which everybody who hears by choice does once a week only, so that gear may be overdue for a
 * week before anybody is told, in the order given.
 */
export function storesHeardWeekly(
  storeIds: readonly number[],
  hearers: readonly Hearer[],
): readonly number[] {
  return storeIds.filter((storeId) => {
    const byChoice = hearers.filter((hearer) => hearsByChoice(hearer, storeId));
    return byChoice.length > 0 && byChoice.every(({ digest }) => digest === 'weekly');
  });
}

function hearsByChoice(hearer: Hearer, storeId: number): boolean {
  const { roles, digest, storeIds } = hearer;
  return (
    canBeReached(hearer) &&
    digest !== 'none' &&
    (storeIds === null || storeIds.includes(storeId)) &&
    roles.some((role) => ANSWERING_ROLES.includes(role))
  );
}

function canBeReached({ active, hasAddress }: Hearer): boolean {
  return active && hasAddress;
}
