import { describe, expect, it } from 'vitest';
import { conflictWords } from '../../src/web/phone/client/conflict-words.js';
import type { CheckReceipt, PhoneItem } from '../../src/web/phone/client/contract.js';
import { standingOf } from '../../src/web/phone/client/standing.js';
import type { SavedCheck } from '../../src/web/phone/client/store.js';

const DAY = '2026-11-25';
const ITEM: PhoneItem = {
  id: 1,
  tag: 'RS-1',
  serial: '77 A',
  maker: 'Harrow Works',
  kind: 'ratchetStrap',
  condition: 'inService',
  currency: 'inDate',
  standing: 'in date',
  check: { state: 'unchecked' },
};
const receipt = (clockDoubtful: boolean): CheckReceipt => ({
  inspectionId: 1,
  itemCondition: 'inService',
  defects: [],
  clockDoubtful,
});

/** How the item stands at noon after a check passed at eleven, which the server took a minute later. */
function standing(clockDoubtful: boolean, outcome: SavedCheck['outcome'] = 'fit') {
  const check: SavedCheck = {
    seq: 1,
    key: 'k',
    madeBy: { id: 1, name: 'Person 1' },
    itemId: 1,
    tag: ITEM.tag,
    body: { jobId: 1, checkedAt: `${DAY}T11:00:00.000Z`, offsetMinutes: 0, answers: [] },
    outcome,
    failed: outcome === 'fit' ? [] : ['The webbing is cut.'],
    sending: 'sent',
    sentAt: `${DAY}T11:01:00.000Z`,
    receipt: receipt(clockDoubtful),
  };
  return standingOf({
    item: ITEM,
    bundleDay: DAY,
    timeZone: 'UTC',
    fetchedAt: `${DAY}T08:00:00.000Z`,
    checks: [check],
    now: Date.parse(`${DAY}T12:00:00.000Z`),
  });
}

describe('a check by a clock in doubt, on the phone', () => {
  it('leaves the item to be checked again, where another one counts', () => {
    expect(standing(false)).toMatchObject({ state: 'ok' });
    expect(standing(true)).toMatchObject({ state: 'plain', word: 'to check', mayBeChecked: true });
  });

  it('blocks the item all the same when it failed', () => {
    expect(standing(true, 'unfit')).toMatchObject({ state: 'refused', mayBeChecked: false });
  });

  it('is told in words, beside whatever else its maker could not know', () => {
    expect(conflictWords(receipt(false))).toBeUndefined();
    expect(conflictWords(receipt(true))).toContain('does not count');
    const both = conflictWords({ ...receipt(true), conflict: { code: 'left_job' } });
    expect(both).toContain('no longer on this job; your check is kept. This check does not count');
    expect(both).toContain('check the gear again');
  });
});
