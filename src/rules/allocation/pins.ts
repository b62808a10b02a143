import type { Pin, UnmetPin, UnmetPinReason } from './allocation.js';
import { compareNaturally } from './natural-order.js';
import type { Offer, OfferedItem, OfferTable } from './offers.js';

/** The offers that pins decide beforehand, and the pins that could not be honoured. */
export interface Pinned {
  readonly held: readonly Offer[];
  readonly unmet: readonly UnmetPin[];
}

/**
 * Honours pins in natural tag order (of one item, in natural order of the line keys), until the line is full. A pin
 * given twice counts once. An item without an offer for the line is refused there, and no pin changes that.
 */
export function holdPins(table: OfferTable, pins: readonly Pin[]): Pinned {
  const lineNumbers = new Map(table.lines.map(({ key }, line) => [key, line]));
  const items = new Map(table.items.map((item) => [item.itemId, item]));
  const room = table.lines.map(({ quantity }) => quantity);
  const held = new Map<OfferedItem, Offer>();
  const unmet: UnmetPin[] = [];
  for (const pin of inOrder(pins, table)) {
    const line = lineNumbers.get(pin.lineKey);
    const item = items.get(pin.itemId);
    const offer = item?.offers.find((candidate) => candidate.line === line);
    const before = item && held.get(item);
    const reason = whyNot(line, offer, before, room);
    if (reason !== undefined) unmet.push({ itemId: pin.itemId, lineKey: pin.lineKey, reason });
    else if (offer) {
      held.set(offer.item, offer);
      room[offer.line] = (room[offer.line] ?? 0) - 1;
    }
  }
  return { held: [...held.values()], unmet };
}

function whyNot(
  line: number | undefined,
  offer: Offer | undefined,
  before: Offer | undefined,
  room: readonly number[],
): UnmetPinReason | undefined {
  if (line === undefined) return 'unknown_line';
  if (offer === undefined) return 'not_fit_for_line';
  if (before !== undefined) return 'pinned_to_another_line';
  return (room[line] ?? 0) > 0 ? undefined : 'line_full';
}

/** Known items by tag rank, then the others by id; then by line. Repeated pins are left out. */
function inOrder(pins: readonly Pin[], { items }: OfferTable): readonly Pin[] {
  const ranks = new Map(items.map(({ itemId }, rank) => [itemId, rank]));
  const rankOf = (pin: Pin): number => ranks.get(pin.itemId) ?? items.length;
  const sorted = [...pins].sort(
    (left, right) =>
      rankOf(left) - rankOf(right) ||
      left.itemId - right.itemId ||
      compareNaturally(left.lineKey, right.lineKey),
  );
  return sorted.filter((pin, place) => {
    const before = sorted[place - 1];
    return before === undefined || before.itemId !== pin.itemId || before.lineKey !== pin.lineKey;
  });
}
