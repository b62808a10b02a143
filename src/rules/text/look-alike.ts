/** Signs that are told apart badly on worn metal or by a tired reader, each to the digit it is taken for. */
const LOOK_ALIKES: Readonly<Record<string, string>> = {
  O: '0',
  Q: '0',
  I: '1',
  L: '1',
  '|': '1',
  Z: '2',
  S: '5',
  G: '6',
  B: '8',
};

/** Cyrillic and Greek capitals that print like Latin ones, as they come out of a sheet typed on another keyboard. */
const LATIN_TWINS: Readonly<Record<string, string>> = {
  А: 'A',
  В: 'B',
  Е: 'E',
  К: 'K',
  М: 'M',
  Н: 'H',
  О: 'O',
  Р: 'P',
  С: 'C',
  Т: 'T',
  У: 'Y',
  Х: 'X',
  Α: 'A',
  Β: 'B',
  Ε: 'E',
  Ζ: 'Z',
  Η: 'H',
  Ι: 'I',
  Κ: 'K',
  Μ: 'M',
  Ν: 'N',
  Ο: 'O',
  Ρ: 'P',
  Τ: 'T',
  Υ: 'Y',
  Χ: 'X',
};

/**
 * The key under which two marks that could be mistaken for each other meet: 'O1234I', '01234I' and 'o-1234 1' share
 * one. Upper case, separators dropped, letters folded to the digits they resemble. Two items sharing a key call for
 * a warning, not a refusal: they may well be two items, but a storeman at dusk will confuse them.
 */
export function lookAlikeKey(text: string): string {
  const upper = text
    .normalize('NFKD')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}|]/gu, '');
  return [...upper]
    .map((sign) => LATIN_TWINS[sign] ?? sign)
    .map((sign) => LOOK_ALIKES[sign] ?? sign)
    .join('');
}

/**
 * The key under which two marks are the same mark: upper case, with each run of spaces and hyphens one hyphen and
 * none at the ends. 'sl 014' is 'SL-014', but 'SL014' is another mark, and so is 'A-1-23' beside 'A-12-3': dropping
 * the separators could merge two items that are stamped differently, and `lookAlikeKey` warns of those.
 */
export function identityKey(text: string): string {
  return text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[\s\p{Pd}]+/gu, '-')
    .replace(/^-|-$/g, '');
}
