import { describe, expect, it } from 'vitest';
import type { CheckAnswer, CheckPoint } from '../../src/rules/checks/checklist.js';
import { stillCounts, withinRoom } from '../../src/web/phone/client/begun-check.js';
import type { PhoneItem } from '../../src/web/phone/client/contract.js';
import { NOTHING_ENTERED } from '../../src/web/phone/client/draft.js';
import { gearGroups } from '../../src/web/phone/client/gear-groups.js';
import type { ItemOnPhone } from '../../src/web/phone/client/kept-job.js';
import { meantBy } from '../../src/web/phone/client/meant-items.js';
import type { Standing } from '../../src/web/phone/client/standing.js';
import { verdictOf } from '../../src/web/phone/client/verdict.js';

const ITEM: PhoneItem = {
  id: 1,
  tag: 'A-1',
  serial: null,
  maker: 'Invented',
  kind: 'strap',
  condition: 'inService',
  currency: 'inDate',
  standing: 'in date',
  check: { state: 'unchecked' },
};

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

describe('a check that failed, on the phone', () => {
  const source = { key: 'doe-std-1090', page: '299', verified: 'read' } as const;
  const limit = { limit: '0.1', atLimit: 'passes', source } as const;
  const length = (name: string) => ({ name, label: `${name} of it`, measures: 'length' }) as const;
  const webbing: CheckPoint = {
    key: 'webbing',
    look: 'Look at the webbing.',
    failsWhen: 'It is cut.',
    severity: 'immediateDanger',
    figures: [length('cut'), length('width'), { name: 'wires', label: 'wires', measures: 'count' }],
    criteria: [
      { ...limit, rule: 'shareAbove', part: 'cut', whole: 'width' },
      { ...limit, rule: 'above', part: 'wires', limit: '10', atLimit: 'fails' },
    ],
    source,
  };
  const inches = (value: string) => ({ value, unit: 'in' }) as const;
  const failed = (answer: Omit<CheckAnswer, 'point'>, sources?: { key: string; title: string }[]) => {
    const verdict = verdictOf({ points: [webbing], ...(sources && { sources }) }, [
      { point: 'webbing', ...answer },
    ]);
    if ('problems' in verdict) throw new Error('not judged');
    return verdict.failed.map((words) => words.replace(/\u00a0/g, ' '));
  };

  it('is told with what was measured, its limit and who sets it', () => {
    const figures = { cut: inches('1/4'), width: inches('2'), wires: { value: '10', unit: '' } } as const;
    expect(failed({ answer: 'good', figures }, [{ key: source.key, title: 'A handbook' }])).toEqual([
      'Look at the webbing. Bad: It is cut. ' +
        'Measured: cut of it 0.25 in, width of it 2 in, share 0.125; the limit is 0.1. Source: A handbook. ' +
        'Measured: wires 10; the limit is 10. Source: A handbook.',
    ]);
  });

  it('is told without figures that hold, and with its remark; an older page kept no names of sources', () => {
    const figures = { cut: inches('0.1'), width: inches('2') };
    expect(failed({ answer: 'bad', figures, remarks: 'oily' })).toEqual([
      'Look at the webbing. Bad: It is cut. Remark: oily',
    ]);
    expect(failed({ answer: 'good', figures: { wires: { value: '11', unit: '' } } })).toEqual([
      'Look at the webbing. Bad: It is cut. Measured: wires 11; the limit is 10. Source: doe-std-1090.',
    ]);
  });
});

describe('a tag on the phone', () => {
  const item = (id: number, tag: string, serial: string | null = null) => ({ ...ITEM, id, tag, serial });
  const list = [
    item(1, 'RS-010', 'A 77'),
    item(2, 'RS-O1O', 'B 78'),
    item(3, 'RS-014'),
    item(4, 'LS-11', 'RS-5'),
    item(5, 'RS-5'),
    item(6, 'Ж-1'),
  ];
  const meant = (text: string, isScanned: boolean) => {
    const found = meantBy(list, { text, isScanned });
    return found.certain ? found.certain.id : found.alike.map(({ id }) => id);
  };

  it.each([
    ['RS-014', 3],
    ['rs 014', 3],
    ['RS014', 3],
    ['b 78', 2],
    ['Ж1', 6],
    // Read alike: the person chooses.
    ['RS-010', [1, 2]],
    ['RS-O10', [1, 2]],
    ['RS-O14', [3]],
    ['RS-5', [5, 4]],
    ['R5-5', [5]],
    // Nothing is near enough.
    ['RS-15', []],
    ['-', []],
    ['', []],
  ])('typed as %s means %o', (text, expected) => {
    const found = meant(text, false);
    expect(typeof found === 'number' ? found : [...found].sort()).toEqual(
      typeof expected === 'number' ? expected : [...expected].sort(),
    );
  });

  it('read off a code is exact, and chosen where no item carries just that', () => {
    expect(meant('RS-010', true)).toBe(1);
    expect(meant('RS-O1O', true)).toBe(2);
    expect(meant('RS-0I0', true)).toEqual([1, 2]);
    expect(meant('RS-99', true)).toEqual([]);
  });
});

describe('the gear of a job by kind', () => {
  const entry = (tag: string, kind: string, state: Standing['state']): ItemOnPhone => ({
    item: { ...ITEM, id: Number(tag.replace(/\D/g, '')), tag, kind },
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
