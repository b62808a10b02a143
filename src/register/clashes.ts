import { In, type EntityManager } from 'typeorm';
import { Problem, type ProblemCode } from '../problem.js';
import type { EnteredColumns } from './new-item.js';
import { ItemEntity } from './item.entity.js';

/** An item of the register that stands in the way of an entry, or makes one doubt it. */
export interface Clash {
  /** Place of the entry in the list that was handed over. */
  readonly index: number;
  readonly code: Extract<ProblemCode, 'tag_taken' | 'serial_taken' | 'serial_looks_alike'>;
  readonly other: Pick<ItemEntity, 'id' | 'tag' | 'serial' | 'maker'>;
}

type Keys = Pick<EnteredColumns, 'tagKey' | 'makerKey' | 'serialKey' | 'lookAlikeKey'>;

const KEYS_AT_A_TIME = 500;

/** The clashes of the entries with the register (not with each other), leaving out the item with the number `except`. */
export async function findClashes(
  manager: EntityManager,
  entries: readonly Keys[],
  except?: number,
): Promise<Clash[]> {
  const clashes: Clash[] = [];
  for (let start = 0; start < entries.length; start += KEYS_AT_A_TIME) {
    const chunk = entries.slice(start, start + KEYS_AT_A_TIME);
    const others = (await neighbours(manager, chunk)).filter(({ id }) => id !== except);
    chunk.forEach((entry, place) => {
      for (const other of others) {
        const code = clashBetween(entry, other);
        if (code) clashes.push({ index: start + place, code, other });
      }
    });
  }
  return clashes;
}

/** The problem that a clash is to the one who enters the item. */
export function clashProblem({ code, other }: Clash): Problem {
  const named = `${other.tag} (${other.maker}, serial number ${other.serial ?? 'unknown'})`;
  const details: Readonly<Record<Clash['code'], string>> = {
    tag_taken: `The tag is on ${named}.`,
    serial_taken: `${named} has that maker and serial number.`,
    serial_looks_alike: `${named} has a serial number that is easily mistaken for this one.`,
  };
  return new Problem(code, details[code], { members: { otherItem: { id: other.id, tag: other.tag } } });
}

/** How an entry clashes with an item, the worst only: a serial that is the same also looks alike. */
function clashBetween(entry: Keys, other: ItemEntity): Clash['code'] | undefined {
  if (entry.tagKey === other.tagKey) return 'tag_taken';
  if (entry.serialKey === null || entry.makerKey !== other.makerKey) return undefined;
  if (entry.serialKey === other.serialKey) return 'serial_taken';
  return entry.lookAlikeKey === other.lookAlikeKey ? 'serial_looks_alike' : undefined;
}

async function neighbours(manager: EntityManager, entries: readonly Keys[]): Promise<ItemEntity[]> {
  const lookAlikes = entries.flatMap(({ lookAlikeKey }) => (lookAlikeKey === null ? [] : [lookAlikeKey]));
  return manager.find(ItemEntity, {
    where: [
      { tagKey: In(entries.map(({ tagKey }) => tagKey)) },
      { makerKey: In([...new Set(entries.map(({ makerKey }) => makerKey))]), lookAlikeKey: In(lookAlikes) },
    ],
  });
}
