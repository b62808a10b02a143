import type {
  Allocation,
  AllocationInput,
  Candidate,
  FitOption,
} from '../../src/rules/allocation/allocation.js';

/** An option by its figures: transport, rating beyond the need in permille, days to spare. */
export function on(lineKey: string, transport = 0, overRatingPermille = 0, daysToSpare = 0): FitOption {
  return { lineKey, transport, overRatingPermille, daysToSpare };
}

/** An item with its options. */
export function item(itemId: number, tag: string, ...options: readonly FitOption[]): Candidate {
  return { itemId, tag, options };
}

/** A job of lines by key and quantity. */
export function job(
  quantities: Readonly<Record<string, number>>,
  candidates: readonly Candidate[],
  pins: AllocationInput['pins'] = [],
): AllocationInput {
  return {
    lines: Object.entries(quantities).map(([key, quantity]) => ({ key, quantity })),
    candidates,
    pins,
  };
}

/** The answer in short: `line:tag` for each item. */
export function places({ chosen }: Allocation): readonly string[] {
  return chosen.map(({ lineKey, tag }) => `${lineKey}:${tag}`);
}
