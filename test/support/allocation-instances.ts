import type {
  AllocationInput,
  Candidate,
  FitOption,
  LineDemand,
  Pin,
} from '../../src/rules/allocation/allocation.js';
import { type SeededRandom, seededRandom } from './seeded-random.js';

/**
 * How an instance is drawn. `store` is like a real one: items have a rating, a home store and a due day, lines a need,
 * and an item fits every line it is rated for. `scrambled` draws each pair by itself with small figures, so that ties
 * and chains of swaps are many.
 */
export interface InstanceShape {
  readonly kind: 'store' | 'scrambled';
  readonly lines: number;
  readonly items: number;
  /** Units wanted by all lines together. */
  readonly units: number;
  /** How many pins to try; only pins that can all be honoured are kept. */
  readonly pins: number;
}

/** The same instance for the same seed and shape, always. */
export function allocationInstance(seed: number, shape: InstanceShape): AllocationInput {
  const random = seededRandom(seed);
  const lines = drawLines(random, shape);
  const candidates =
    shape.kind === 'store' ? storeItems(random, shape, lines) : scrambledItems(random, shape, lines);
  return { lines, candidates, pins: drawPins(random, shape.pins, lines, candidates) };
}

/** The same instance with lines, candidates, options and pins in another order. */
export function reordered(seed: number, input: AllocationInput): AllocationInput {
  const random = seededRandom(seed);
  const candidates = random.shuffled(input.candidates);
  return {
    lines: random.shuffled(input.lines),
    candidates: candidates.map((item) => ({ ...item, options: random.shuffled(item.options) })),
    pins: random.shuffled(input.pins),
  };
}

function drawLines(random: SeededRandom, shape: InstanceShape): readonly LineDemand[] {
  const quantities = Array.from({ length: shape.lines }, () => 0);
  for (let unit = 0; unit < shape.units; unit += 1) {
    const line = random.whole(0, shape.lines - 1);
    quantities[line] = (quantities[line] ?? 0) + 1;
  }
  return quantities.map((quantity, line) => ({ key: `L${line + 1}`, quantity }));
}

const RATINGS_KG = [500, 800, 1000, 1600, 2000, 3200, 5000];
const STORE_DISTANCES_KM = [0, 0, 12, 40];

function storeItems(
  random: SeededRandom,
  shape: InstanceShape,
  lines: readonly LineDemand[],
): readonly Candidate[] {
  const needsKg = lines.map(({ key }) => ({ lineKey: key, needKg: random.whole(300, 4800) }));
  return drawItems(random, shape.items, () => {
    const ratingKg = random.oneOf(RATINGS_KG);
    const transport = random.oneOf(STORE_DISTANCES_KM);
    const daysToSpare = random.whole(0, 365);
    return needsKg
      .filter(({ needKg }) => needKg <= ratingKg)
      .map(({ lineKey, needKg }) => {
        const overRatingPermille = Math.floor(((ratingKg - needKg) * 1000) / needKg);
        return { lineKey, transport, overRatingPermille, daysToSpare };
      });
  });
}

function scrambledItems(
  random: SeededRandom,
  shape: InstanceShape,
  lines: readonly LineDemand[],
): readonly Candidate[] {
  const fitPercent = random.whole(20, 90);
  return drawItems(random, shape.items, () =>
    lines
      .filter(() => random.percent(fitPercent))
      .map(({ key }) => ({
        lineKey: key,
        transport: random.whole(0, 2),
        overRatingPermille: random.whole(0, 5),
        daysToSpare: random.whole(0, 5),
      })),
  );
}

/** Items in drawn order, with tags such as `SL-7` and `RS-112` whose order is not that of the ids. */
function drawItems(
  random: SeededRandom,
  count: number,
  options: () => readonly FitOption[],
): readonly Candidate[] {
  const numbers = random.shuffled(Array.from({ length: count }, (_, place) => place + 1));
  return numbers.map((number, place) => ({
    itemId: place + 1,
    tag: `${random.oneOf(['PL', 'RS', 'SL'])}-${number}`,
    options: options(),
  }));
}

function drawPins(
  random: SeededRandom,
  tries: number,
  lines: readonly LineDemand[],
  candidates: readonly Candidate[],
): readonly Pin[] {
  const room = new Map(lines.map(({ key, quantity }) => [key, quantity]));
  const pins = new Map<number, Pin>();
  for (let turn = 0; turn < tries; turn += 1) {
    const { itemId, options } = random.oneOf(candidates);
    if (options.length === 0 || pins.has(itemId)) continue;
    const { lineKey } = random.oneOf(options);
    const left = room.get(lineKey) ?? 0;
    if (left === 0) continue;
    room.set(lineKey, left - 1);
    pins.set(itemId, { itemId, lineKey });
  }
  return [...pins.values()];
}
