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

// Unicode Technical Standard 39, confusables.txt (from memory): capitals of one shape in three alphabets.
const CYRILLIC = { '0410': 'A', '0412': 'B', '0415': 'E', '041A': 'K', '041C': 'M', '041D': 'H' };
const CYRILLIC_ON = { '041E': 'O', '0420': 'P', '0421': 'C', '0422': 'T', '0423': 'Y', '0425': 'X' };
const GREEK = { '0391': 'A', '0392': 'B', '0395': 'E', '0396': 'Z', '0397': 'H', '0399': 'I', '039A': 'K' };
const GREEK_ON = {
  '039C': 'M',
  '039D': 'N',
  '039F': 'O',
  '03A1': 'P',
  '03A4': 'T',
  '03A5': 'Y',
  '03A7': 'X',
};

describe('capitals of another alphabet', () => {
  it.each(Object.entries({ ...CYRILLIC, ...CYRILLIC_ON, ...GREEK, ...GREEK_ON }))(
    'U+%s is taken for %s',
    (codePoint, latin) => {
      const twin = String.fromCodePoint(Number.parseInt(codePoint, 16));
      expect(twin).not.toBe(latin);
      expect(lookAlikeKey(`7${twin}7`)).toBe(lookAlikeKey(`7${latin}7`));
      expect(lookAlikeKey(`7${twin.toLowerCase()}7`)).toBe(lookAlikeKey(`7${latin}7`));
    },
  );

  it('fold on to the digit that their Latin twin resembles', () => {
    // Cyrillic and Greek O, Greek I, and the plain signs: all but the T resemble a digit.
    expect(lookAlikeKey('T-\u041E\u039F\u0399 o.Q/il|z sgb')).toBe('T001001112568');
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
