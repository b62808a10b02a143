import type { AllocationInput, Candidate } from './allocation.js';
import { LARGEST_FIGURE } from './cost.js';
import { noteOnce } from './given-once.js';

/**
 * Refuses input that has no meaning.
 * @throws RangeError for a line, item, tag or option given twice, a quantity that is not a whole number from 0, or a
 * figure that is not a whole number from 0 to `LARGEST_FIGURE`.
 */
export function checkInput(input: AllocationInput): void {
  const lineKeys = new Set<string>();
  for (const { key, quantity } of input.lines) {
    noteOnce(lineKeys, key, 'line');
    if (!Number.isSafeInteger(quantity) || quantity < 0) {
      throw new RangeError(`quantity ${quantity} of line '${key}' is not a whole number from 0`);
    }
  }
  const itemIds = new Set<number>();
  const tags = new Set<string>();
  for (const candidate of input.candidates) {
    noteOnce(itemIds, candidate.itemId, 'item');
    noteOnce(tags, candidate.tag, 'tag');
    checkOptions(candidate);
  }
}

function checkOptions({ tag, options }: Candidate): void {
  const seen = new Set<string>();
  for (const option of options) {
    noteOnce(seen, option.lineKey, 'option for line');
    checkFigure(option.transport, 'transport', tag);
    checkFigure(option.overRatingPermille, 'overRatingPermille', tag);
    checkFigure(option.daysToSpare, 'daysToSpare', tag);
  }
}

function checkFigure(figure: number, name: string, tag: string): void {
  if (Number.isInteger(figure) && figure >= 0 && figure <= LARGEST_FIGURE) return;
  throw new RangeError(`${name} ${figure} of '${tag}' is not a whole number from 0 to ${LARGEST_FIGURE}`);
}
