import { describe, expect, it } from 'vitest';
import { identityKey, lookAlikeKey } from '../../src/rules/text/look-alike.js';

// Which signs are taken for each other is common practice, no source.
describe('lookAlikeKey', () => {
  it.each([
    ['O1234I', '01234I'],
    ['O1234I', 'o-1234 l'],
    ['SL-014', 'SL014'],
    ['SL/014', 'sl.O14'],
    ['B17', '8I7'],
    ['Z5', '2S'],
    ['G6Q', '66O'],
    ['A|7', 'A17'],
    ['АВ-12', 'AB12'],
    ['ＡＢ１２', 'AB12'],
    ['É7', 'E7'],
  ])('%s and %s could be mistaken for each other', (one, other) => {
    expect(lookAlikeKey(one)).toBe(lookAlikeKey(other));
  });

  it.each([
    ['A12', 'A13'],
    ['A12', 'A122'],
    ['C7', 'G7'],
    ['D0', 'O0'],
  ])('%s and %s are told apart', (one, other) => {
    expect(lookAlikeKey(one)).not.toBe(lookAlikeKey(other));
  });
});

describe('identityKey', () => {
  it.each([
    ['sl-014', 'SL-014'],
    [' SL 014 ', 'SL-014'],
    ['SL -- 014', 'SL-014'],
    ['SL–014', 'SL-014'],
    ['-SL-014-', 'SL-014'],
    ['ＳＬ-014', 'SL-014'],
  ])('%j is the mark %s', (written, key) => {
    expect(identityKey(written)).toBe(key);
  });

  it.each([
    ['SL014', 'SL-014'],
    ['A-1-23', 'A-12-3'],
    ['O1234I', '01234I'],
    ['A/1', 'A-1'],
  ])('%s is not %s', (one, other) => {
    expect(identityKey(one)).not.toBe(identityKey(other));
  });
});
