import { badInput } from '../http/input.js';
import type { Problem } from '../problem.js';
import { layOutWords, type LabelWords, type TextLine } from './label-text.js';
import { qrSymbol, type QrSymbol } from './qr-symbol.js';
import type { SheetLayout } from './sheet-layout.js';

/** The smallest module that a phone reads off worn print from 20 cm away, in millimetres. Common practice, no source. */
export const SMALLEST_MODULE_MM = 0.4;

/** The largest symbol: beyond it, size gains nothing. */
const LARGEST_SYMBOL_MM = 130;

const GAP_MM = 1;

/** A label with everything in its place, in millimetres from its left upper corner. */
export interface DrawnLabel {
  readonly tag: string;
  readonly url: string;
  readonly symbol: QrSymbol & { readonly xMm: number; readonly yMm: number; readonly moduleMm: number };
  readonly text: { readonly xMm: number; readonly yMm: number; readonly lines: readonly TextLine[] };
}

/**
 * Draws a label: the symbol beside the words, or above them where the label is higher than wide.
 * @throws Problem `bad_input` where modules or words would be too small to read.
 */
export function drawLabel(url: string, words: LabelWords, layout: SheetLayout): DrawnLabel {
  const { labelWidthMm, labelHeightMm, marginMm } = layout;
  const [innerWidthMm, innerHeightMm] = [labelWidthMm - 2 * marginMm, labelHeightMm - 2 * marginMm];
  const isUpright = labelHeightMm > labelWidthMm;
  const edgeMm = Math.min(
    isUpright ? innerHeightMm * 0.5 : innerWidthMm * 0.45,
    isUpright ? innerWidthMm : innerHeightMm,
    LARGEST_SYMBOL_MM,
  );
  const symbol = qrSymbol(url);
  const moduleMm = edgeMm / symbol.edgeModules;
  if (moduleMm < SMALLEST_MODULE_MM) throw tooSmall(words.tag, layout, moduleMm);
  const area = isUpright
    ? { widthMm: innerWidthMm, heightMm: innerHeightMm - edgeMm - GAP_MM }
    : { widthMm: innerWidthMm - edgeMm - GAP_MM, heightMm: innerHeightMm };
  const lines = layOutWords(words, area);
  if (!lines) throw wordsTooSmall(words.tag, layout);
  const place = {
    xMm: isUpright ? marginMm + (innerWidthMm - edgeMm) / 2 : marginMm,
    yMm: isUpright ? marginMm : marginMm + (innerHeightMm - edgeMm) / 2,
  };
  const text = isUpright
    ? { xMm: marginMm, yMm: marginMm + edgeMm + GAP_MM, lines }
    : { xMm: marginMm + edgeMm + GAP_MM, yMm: marginMm, lines };
  return { tag: words.tag, url, symbol: { ...symbol, ...place, moduleMm }, text };
}

function tooSmall(tag: string, { name }: SheetLayout, moduleMm: number): Problem {
  const message =
    `choose a larger label: on '${name}' the code of ${tag} would have modules of ${moduleMm.toFixed(2)} mm, ` +
    `less than the ${SMALLEST_MODULE_MM} mm that a phone reads; a shorter address of the server helps too`;
  return badInput([{ field: 'layout', message }]);
}

function wordsTooSmall(tag: string, { name }: SheetLayout): Problem {
  const message = `choose a larger label: on '${name}' the words of ${tag} would be too small to read`;
  return badInput([{ field: 'layout', message }]);
}
