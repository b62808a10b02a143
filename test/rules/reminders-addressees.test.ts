import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  hearersOf,
  storesHeardWeekly,
  storesUnheard,
  type Hearer,
} from '../../src/rules/reminders/addressees.js';
import { DIGEST_CHOICES } from '../../src/rules/reminders/digest-choice.js';

const STOREMAN: Hearer = {
  personId: 1,
  roles: ['storeman'],
  active: true,
  hasAddress: true,
  digest: 'daily',
  storeIds: null,
};
const MANAGER: Hearer = { ...STOREMAN, personId: 2, roles: ['manager'], digest: 'none' };

const anyHearers = fc.array(
  fc.record({
    personId: fc.integer({ min: 1, max: 99 }),
    roles: fc.subarray(['crew', 'storeman', 'competentPerson', 'manager']),
    active: fc.boolean(),
    hasAddress: fc.boolean(),
    digest: fc.constantFrom(...DIGEST_CHOICES),
    storeIds: fc.option(fc.subarray([1, 2, 3])),
  }),
  { maxLength: 6 },
);

describe('who hears of a store', () => {
  it.each(['storeman', 'manager', 'competentPerson'])(
    'is a %s who chose to, of all stores or of this one',
    (role) => {
      const person = { ...STOREMAN, roles: ['crew', role] };
      expect(hearersOf(7, [person])).toEqual({ personIds: [1], byDefault: false });
      expect(hearersOf(7, [{ ...person, storeIds: [6, 7] }])).toEqual({ personIds: [1], byDefault: false });
      expect(storesUnheard([7], [{ ...person, digest: 'weekly' }])).toEqual([]);
      expect(storesUnheard([7], [{ ...person, digest: 'overdueOnly' }])).toEqual([]);
    },
  );

  it.each([
    ['a closed account', { active: false }],
    ['nobody with an address', { hasAddress: false }],
    ['no digest', { digest: 'none' as const }],
    ['another store', { storeIds: [6] }],
    ['no store', { storeIds: [] }],
    ['crew only', { roles: ['crew'] }],
  ])('is the manager, whatever he chose, instead of %s', (_, part) => {
    const hearers = [{ ...STOREMAN, ...part }, MANAGER];
    expect(hearersOf(7, hearers)).toEqual({ personIds: [2], byDefault: true });
    expect(storesUnheard([6, 7], [{ ...STOREMAN, ...part }])).toContain(7);
  });

  it('is not the manager who wants no mail where somebody else hears', () => {
    expect(hearersOf(7, [STOREMAN, MANAGER])).toEqual({ personIds: [1], byDefault: false });
  });

  it('is told of it a week late at most where all who chose to hear chose once a week', () => {
    const weekly: Hearer = { ...STOREMAN, digest: 'weekly' };
    expect(storesHeardWeekly([7, 8], [weekly, { ...MANAGER, digest: 'weekly' }])).toEqual([7, 8]);
    expect(storesHeardWeekly([6, 7, 8], [{ ...weekly, storeIds: [6, 8] }])).toEqual([6, 8]);
  });

  it.each([
    ['somebody hears daily', { digest: 'daily' as const }],
    ['somebody hears of what is overdue', { digest: 'overdueOnly' as const }],
  ])('is told of it within a day where %s', (_, part) => {
    const weekly: Hearer = { ...STOREMAN, digest: 'weekly' };
    expect(storesHeardWeekly([7], [weekly, { ...MANAGER, ...part }])).toEqual([]);
    // Someone who hears of another store, or cannot be reached, is no help.
    expect(storesHeardWeekly([7], [weekly, { ...MANAGER, ...part, storeIds: [6] }])).toEqual([7]);
    expect(storesHeardWeekly([7], [weekly, { ...MANAGER, ...part, active: false }])).toEqual([7]);
  });

  it('is told of it within a day where nobody chose to hear, by the managers', () => {
    expect(storesHeardWeekly([7], [MANAGER])).toEqual([]);
  });

  it('is never nobody, unless no manager has an address and nobody chose to hear', () => {
    fc.assert(
      fc.property(anyHearers, fc.integer({ min: 1, max: 4 }), (hearers, storeId) => {
        const { personIds, byDefault } = hearersOf(storeId, hearers);
        const reachable = hearers.filter(({ active, hasAddress }) => active && hasAddress);
        const managers = reachable.filter(({ roles }) => roles.includes('manager'));
        if (managers.length > 0) expect(personIds.length).toBeGreaterThan(0);
        if (byDefault) expect(personIds).toEqual(managers.map(({ personId }) => personId));
        expect(storesUnheard([storeId], hearers)).toEqual(byDefault ? [storeId] : []);
        expect(reachable.map(({ personId }) => personId)).toEqual(expect.arrayContaining([...personIds]));
      }),
    );
  });
});
