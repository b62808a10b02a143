import { describe, expect, it } from 'vitest';
import { stillCounts, withinRoom } from '../../src/web/phone/client/begun-check.js';
import { NOTHING_ENTERED } from '../../src/web/phone/client/draft.js';
import { gearGroups } from '../../src/web/phone/client/gear-groups.js';
import type { ItemOnPhone } from '../../src/web/phone/client/kept-job.js';
import type { Standing } from '../../src/web/phone/client/standing.js';

// Working time rules know a shift of 12 h as the longest usual one: common practice, no source.
describe('a check that was begun', () => {
  const at = (instant: string, timeZone: string) => ({ now: Date.parse(instant), timeZone });

  it.each([
    ['at once', '2026-05-03T06:00:00Z', '2026-05-03T06:00:00Z', 'UTC', true],
    ['after 12 h of the same day', '2026-05-03T06:00:00Z', '2026-05-03T18:00:00Z', 'UTC', true],
    ['a moment later', '2026-05-03T06:00:00Z', '2026-05-03T18:00:00.001Z', 'UTC', false],
    ['after midnight', '2026-05-03T23:50:00Z', '2026-05-04T00:10:00Z', 'UTC', false],
    ['on one day at the site', '2026-05-03T23:50:00Z', '2026-05-04T00:10:00Z', 'Australia/Sydney', true],
    ['over midnight at the site', '2026-05-03T13:50:00Z', '2026-05-03T14:10:00Z', 'Australia/Sydney', false],
    ['with a clock set back', '2026-05-03T09:00:00Z', '2026-05-03T08:59:00Z', 'UTC', false],
  ])('counts %s: %s to %s in %s: %s', (_when, startedAt, now, timeZone, expected) => {
    expect(stillCounts(startedAt, at(now, timeZone))).toBe(expected);
  });

  it('keeps photos up to 2 MB together, and counts those that it leaves out', () => {
    const photo = (bytes: number) => ({ name: `${bytes}.jpg`, image: new Blob([new Uint8Array(bytes)]) });
    const draft = {
      label: { ...NOTHING_ENTERED, answer: 'bad' as const, photos: [photo(1_500_000), photo(600_000)] },
      seams: { ...NOTHING_ENTERED, answer: 'bad' as const, photos: [photo(500_000)] },
    };
    const kept = withinRoom(draft);
    expect(kept.photosLeftOut).toBe(1);
    expect(kept.draft['label']?.photos.map(({ name }) => name)).toEqual(['1500000.jpg']);
    expect(kept.draft['seams']?.photos.map(({ name }) => name)).toEqual(['500000.jpg']);
    expect(kept.draft['label']?.answer).toBe('bad');
  });
});

describe('the gear of a job by kind', () => {
  const entry = (tag: string, kind: string, state: Standing['state']): ItemOnPhone => ({
    item: {
      id: Number(tag.replace(/\D/g, '')),
      tag,
      serial: null,
      maker: 'Invented',
      kind,
      condition: 'inService',
      currency: 'inDate',
      standing: 'in date',
      check: { state: 'unchecked' },
    },
    kind: { kind, name: kind, plural: `${kind}s`, points: [] },
    kindName: kind,
    standing: { state, word: state, why: [], mayBeChecked: state !== 'refused' },
    begun: undefined,
  });
  const gear = [
    entry('A-1', 'sling', 'ok'),
    entry('B-2', 'strap', 'ok'),
    entry('B-3', 'strap', 'refused'),
    entry('B-4', 'strap', 'due'),
    entry('B-5', 'strap', 'plain'),
    entry('C-6', 'shackle', 'plain'),
  ];

  it('counts each kind, puts what is to be checked first, and leaves out what may not be used', () => {
    const strap = gearGroups(gear).find(({ kind }) => kind === 'strap');
    expect(strap?.items.map(({ item }) => item.tag)).toEqual(['B-5', 'B-4', 'B-2']);
    expect(strap).toMatchObject({ plural: 'straps', total: 4, checked: 2, refused: 1, toCheck: 1 });
  });

  it('puts a kind that is done last, and the kind that was checked last first', () => {
    expect(gearGroups(gear).map(({ kind }) => kind)).toEqual(['strap', 'shackle', 'sling']);
    expect(gearGroups(gear, 'shackle').map(({ kind }) => kind)).toEqual(['shackle', 'strap', 'sling']);
    expect(gearGroups(gear, 'sling').map(({ kind }) => kind)).toEqual(['strap', 'shackle', 'sling']);
  });
});
