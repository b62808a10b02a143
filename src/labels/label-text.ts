/** A line of text on a label: its baseline from the top of the text area. */
export interface TextLine {
  readonly text: string;
  readonly sizeMm: number;
  readonly baselineMm: number;
  readonly look: 'tag' | 'strong' | 'plain';
}

/** What a label says. */
export interface LabelWords {
  readonly tag: string;
  readonly kind: string;
  /** Each rating as it is marked. */
  readonly ratings: readonly string[];
  readonly serial: string;
  readonly cautions: string;
}

/** Letter heights at scale 1, in millimetres of the font's size. */
const TAG_MM = 6.5;
const SIZES_MM = { kind: 2.9, rating: 3.4, serial: 2.7, cautions: 2.2 };

const LARGEST_SCALE = 7;
const SMALLEST_SCALE = 0.82; // the smallest words are then 1.8 mm, some 5 points
const SMALLEST_TAG_MM = 3;
const LINE_HEIGHT = 1.2;
const ASCENT = 0.92;
const DESCENT = 0.25;

/** The scale is found to a thousandth of its range. */
const HALVINGS = 10;

/** The advance of a monospaced letter, in parts of its size: 0.60 in every common one. */
const MONOSPACE_ADVANCE = 0.62;

/** Room for fonts that are wider than the one that was measured. */
const SPARE_WIDTH = 1.12;

/** The words as large as they fit into the area, or undefined when they would be too small to read. */
export function layOutWords(
  words: LabelWords,
  area: { readonly widthMm: number; readonly heightMm: number },
): readonly TextLine[] | undefined {
  let fitting = linesThatFit(words, SMALLEST_SCALE, area);
  let [fits, tooLarge] = [SMALLEST_SCALE, LARGEST_SCALE];
  for (let step = 0; fitting && step < HALVINGS; step += 1) {
    const scale = (fits + tooLarge) / 2;
    const lines = linesThatFit(words, scale, area);
    if (lines) [fitting, fits] = [lines, scale];
    else tooLarge = scale;
  }
  return fitting;
}

function linesThatFit(
  words: LabelWords,
  scale: number,
  area: { readonly widthMm: number; readonly heightMm: number },
): readonly TextLine[] | undefined {
  const lines = linesAt(words, scale, area.widthMm);
  const last = lines?.at(-1);
  return last && last.baselineMm + last.sizeMm * DESCENT <= area.heightMm ? lines : undefined;
}

function linesAt(words: LabelWords, scale: number, widthMm: number): TextLine[] | undefined {
  const tag = tagLines(words.tag, TAG_MM * scale, widthMm);
  if (!tag) return undefined;
  const parts = [
    ...tag.lines.map((text) => ({ text, sizeMm: tag.sizeMm, look: 'tag' as const })),
    ...wrapped(words.kind, SIZES_MM.kind * scale, widthMm, 'plain'),
    ...words.ratings.flatMap((rating) => wrapped(rating, SIZES_MM.rating * scale, widthMm, 'strong')),
    ...wrapped(words.serial, SIZES_MM.serial * scale, widthMm, 'plain'),
    ...wrapped(words.cautions, SIZES_MM.cautions * scale, widthMm, 'strong'),
  ];
  let top = 0;
  return parts.map((part) => {
    const baselineMm = top + part.sizeMm * ASCENT;
    top += part.sizeMm * LINE_HEIGHT;
    return { ...part, baselineMm };
  });
}

/** The tag on one line, or on as many as it takes to keep its letters readable. */
function tagLines(
  tag: string,
  wantedMm: number,
  widthMm: number,
): { lines: readonly string[]; sizeMm: number } | undefined {
  const signs = [...tag];
  for (let lines = 1; lines <= 4; lines += 1) {
    const perLine = Math.ceil(signs.length / lines);
    const sizeMm = Math.min(wantedMm, widthMm / (perLine * MONOSPACE_ADVANCE));
    if (sizeMm < SMALLEST_TAG_MM) continue;
    const texts = Array.from({ length: lines }, (_, line) =>
      signs.slice(line * perLine, (line + 1) * perLine).join(''),
    );
    return { lines: texts.filter((text) => text !== ''), sizeMm };
  }
  return undefined;
}

function wrapped(
  text: string,
  sizeMm: number,
  widthMm: number,
  look: 'strong' | 'plain',
): { text: string; sizeMm: number; look: 'strong' | 'plain' }[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((whole) => cutToFit(whole, sizeMm, widthMm))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidthMm(longer, sizeMm) > widthMm) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines.map((each) => ({ text: each, sizeMm, look }));
}

/** A word that is wider than the label, in pieces that are not. */
function cutToFit(word: string, sizeMm: number, widthMm: number): string[] {
  const pieces = [''];
  for (const sign of word) {
    const last = pieces.at(-1) ?? '';
    if (last !== '' && textWidthMm(last + sign, sizeMm) > widthMm) pieces.push(sign);
    else pieces[pieces.length - 1] = last + sign;
  }
  return pieces;
}

/** A careful guess at how wide a text is in a bold sans-serif font. */
function textWidthMm(text: string, sizeMm: number): number {
  const advances = [...text].map((sign) => {
    if (/[MWmw@%]/.test(sign)) return 0.95;
    if (/[A-Z]/.test(sign)) return 0.73;
    if (/[ijlt.,:;'|!() /-]/.test(sign)) return 0.34;
    return /[\u0021-\u024f]/.test(sign) ? 0.6 : 1.05;
  });
  return advances.reduce((sum, advance) => sum + advance, 0) * sizeMm * SPARE_WIDTH;
}
