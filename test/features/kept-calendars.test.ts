import { describe, expect, it } from 'vitest';
import { KeptCalendars } from '../../src/reminders/feed/kept-calendars.js';

const file = (text: string) => ({ text, etag: `"${text}"` });

describe('calendars that are kept', () => {
  it('are found in the very state that they were kept in, and the newest of a feed only', () => {
    const kept = new KeptCalendars();
    kept.keep('quay', 'monday', file('a'));
    expect(kept.find('quay', 'monday')).toEqual(file('a'));
    expect(kept.find('quay', 'tuesday')).toBeUndefined();
    expect(kept.find('quay', undefined)).toBeUndefined();
    expect(kept.find('yard', 'monday')).toBeUndefined();
    kept.keep('quay', 'tuesday', file('b'));
    expect(kept.find('quay', 'monday')).toBeUndefined();
    expect(kept.find('quay', 'tuesday')).toEqual(file('b'));
  });

  it('are 40 at most: the one kept longest goes', () => {
    const kept = new KeptCalendars();
    for (let n = 0; n < 40; n += 1) kept.keep(`feed ${n}`, 's', file(`${n}`));
    kept.keep('feed 0', 't', file('again'));
    kept.keep('one more', 's', file('new'));
    expect(kept.find('feed 1', 's')).toBeUndefined();
    expect(kept.find('feed 0', 't')).toEqual(file('again'));
    expect(kept.find('feed 2', 's')).toEqual(file('2'));
    expect(kept.find('one more', 's')).toEqual(file('new'));
  });
});
