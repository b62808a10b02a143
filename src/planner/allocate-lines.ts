import { allocate } from '../rules/allocation/allocate.js';
import type { Allocation, Candidate, Pin, UnmetPin } from '../rules/allocation/allocation.js';
import { sortedNaturally } from '../rules/allocation/natural-order.js';
import { optionsFor } from './fit-option.js';
import type { HeldItem, PlanInput } from './job-plan.js';
import type { Judged } from './judge-gear.js';
import { servedByLine } from './served-by-line.js';

/** An allocation with what it was made from. */
export interface Allocated extends Allocation {
  readonly judged: readonly Judged[];
  /** Items that served each line and are back. */
  readonly served: ReadonlyMap<string, number>;
}

/**
 * Allocates the judged items to what each line still wants. What is booked stays while it is fit, what is out before
 * what is only reserved; then come the pins, for which a line filled by its booking has no room.
 */
export function allocateLines(input: PlanInput, judged: readonly Judged[]): Allocated {
  const served = servedByLine(input);
  const lines = input.lines.map(({ key, quantity }) => ({
    key,
    quantity: Math.max(0, quantity - (served.get(key) ?? 0)),
  }));
  const candidates = candidatesOf(input, judged);
  const optionsOf = new Map(candidates.map(({ itemId, options }) => [itemId, options]));
  const isFit: IsFit = ({ itemId, lineKey }) =>
    optionsOf.get(itemId)?.some((option) => option.lineKey === lineKey) ?? false;
  const room = new Map(lines.map(({ key, quantity }) => [key, quantity]));
  const held = withinRoom(inOrderOfHold(input.held), room, isFit).kept.filter(isFit);
  const wishes = withinRoom(pinsOf(input, judged), room, isFit, held);
  const answer = allocate({ lines, candidates, pins: [...held, ...wishes.kept] });
  return { ...answer, unmetPins: [...answer.unmetPins, ...wishes.crowdedOut], judged, served };
}

type IsFit = (pin: Pin) => boolean;

function candidatesOf(input: PlanInput, judged: readonly Judged[]): Candidate[] {
  const optionOf = optionsFor(input);
  return judged.flatMap(({ gear, verdicts }) => {
    const options = verdicts.flatMap((on) => (on.verdict.fit ? [optionOf(gear, on)] : []));
    return options.length === 0 ? [] : [{ itemId: gear.itemId, tag: gear.tag, options }];
  });
}

/** What is out first, then what is reserved, each in the order it was promised in. */
function inOrderOfHold(held: readonly HeldItem[]): Pin[] {
  const inState = (wanted: HeldItem['state']) => held.filter(({ state }) => state === wanted);
  return [...inState('out'), ...inState('reserved')].map(({ itemId, lineKey }) => ({ itemId, lineKey }));
}

/** The storeman's pins in natural order of the tags. */
function pinsOf({ choices }: PlanInput, judged: readonly Judged[]): Pin[] {
  const pins = choices.flatMap(({ choice, itemId, lineKey }) =>
    choice === 'pin' && lineKey !== undefined ? [{ itemId, lineKey }] : [],
  );
  const tagOf = ({ itemId }: Pin) => judged.find(({ gear }) => gear.itemId === itemId)?.gear.tag ?? '';
  return sortedNaturally(pins, tagOf);
}

/** Takes fit pins while their lines have room, and counts the room down. Pins that are not fit are kept, to be reported. */
function withinRoom(
  pins: readonly Pin[],
  room: Map<string, number>,
  isFit: IsFit,
  before: readonly Pin[] = [],
): { kept: Pin[]; crowdedOut: UnmetPin[] } {
  const kept: Pin[] = [];
  const crowdedOut: UnmetPin[] = [];
  for (const pin of pins) {
    const left = room.get(pin.lineKey);
    if (before.some(({ itemId, lineKey }) => itemId === pin.itemId && lineKey === pin.lineKey)) continue;
    if (left === undefined || !isFit(pin)) kept.push(pin);
    else if (left <= 0) crowdedOut.push({ ...pin, reason: 'line_full' });
    else {
      kept.push(pin);
      room.set(pin.lineKey, left - 1);
    }
  }
  return { kept, crowdedOut };
}
