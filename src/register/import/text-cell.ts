import { unguardCell } from '../export/cell-guard.js';
import type { Cell } from './table.js';

/** What a spreadsheet would calculate: `=600+200`, `+600+200`, `@SUM(A1)`; but not `+ spare hook`, nor `-800 kg`. */
const FORMULA = /^(?:=|@\p{L}+\(|[+-]\s*(?:\d+(?:\.\d+)?\s*[+*/-]|\p{L}+\())/u;

/** A cell from the text that a file holds. An apostrophe of our own export is taken off, and says that it is text. */
export function textCell(written: string): Cell {
  const unguarded = unguardCell(written.trim());
  if (unguarded !== undefined) return { text: unguarded.trim(), is: 'text' };
  const text = written.trim();
  return { text, is: FORMULA.test(text) ? 'formula' : 'text' };
}
