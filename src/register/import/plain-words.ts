/** Words as they are compared: lower case, no accents, single spaces, no full stops, colons or number signs. */
export function plainWords(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/ø/g, 'o')
    .replace(/ł/g, 'l')
    .replace(/æ/g, 'ae')
    .replace(/[.:#°º'’*]+/g, ' ')
    .replace(/[\s_]+/g, ' ')
    .trim();
}

/** How many letters must be added, taken away or changed to make one word the other (Levenshtein 1966). */
export function lettersApart(one: string, other: string): number {
  let above = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (const [row, letter] of [...one].entries()) {
    const line = [row + 1];
    for (const [column, across] of [...other].entries()) {
      const changed = (above[column] ?? 0) + (letter === across ? 0 : 1);
      line.push(Math.min(changed, (above[column + 1] ?? 0) + 1, (line[column] ?? 0) + 1));
    }
    above = line;
  }
  return above.at(-1) ?? 0;
}
