import { In, Not, type EntityManager } from 'typeorm';
import type { Condition } from '../rules/gear/gear.js';
import { identityKey, lookAlikeKey } from '../rules/text/look-alike.js';
import { ItemEntity } from './item.entity.js';

/** What is said of an item on a plate or a label. */
export type PlateFacts = Pick<ItemEntity, 'id' | 'tag' | 'kind' | 'serial' | 'markings'>;

const IN_USE = Not<Condition>('scrapped');

const COLUMNS = { id: true, tag: true, tagKey: true, kind: true, serial: true, markings: true } as const;

/** Items of a kind or a store that are not scrapped, in the order of their tags. */
export function platesOf(
  manager: EntityManager,
  { kind, storeId }: { kind?: string; storeId?: number },
  limit: number,
): Promise<PlateFacts[]> {
  return manager.find(ItemEntity, {
    select: COLUMNS,
    where: {
      condition: IN_USE,
      ...(kind === undefined ? {} : { kind }),
      ...(storeId === undefined ? {} : { storeId }),
    },
    order: { tagKey: 'ASC' },
    take: limit,
  });
}

/** Items by their numbers, in the order of their tags; none that is scrapped. */
export function platesByIds(manager: EntityManager, ids: readonly number[]): Promise<PlateFacts[]> {
  return manager.find(ItemEntity, {
    select: COLUMNS,
    where: { id: In([...ids]), condition: IN_USE },
    order: { tagKey: 'ASC' },
  });
}

/** Items by their tags, in the order asked for, each once; and the tags that no item which is not scrapped carries. */
export async function platesByTags(
  manager: EntityManager,
  tags: readonly string[],
): Promise<{ items: PlateFacts[]; unknown: string[] }> {
  const asked = new Map(tags.map((tag) => [identityKey(tag), tag]));
  const found = await manager.find(ItemEntity, {
    select: COLUMNS,
    where: { tagKey: In([...asked.keys()]), condition: IN_USE },
  });
  const byKey = new Map(found.map((item) => [item.tagKey, item]));
  return {
    items: [...asked.keys()].flatMap((key) => byKey.get(key) ?? []),
    unknown: [...asked].flatMap(([key, tag]) => (byKey.has(key) ? [] : [tag])),
  };
}

/** Whom a scanned or typed tag may mean. */
export interface TagAnswer {
  /** The item that carries it. */
  readonly item?: { readonly id: number };
  /** Where none does: items whose tags look like it. */
  readonly lookAlikes: readonly Pick<ItemEntity, 'id' | 'tag' | 'kind'>[];
}

const MOST_LOOK_ALIKES = 20;

/** The item that carries a tag, or those whose tags are easily misread for it. */
export async function whoCarries(manager: EntityManager, tag: string): Promise<TagAnswer> {
  const item = await manager.findOne(ItemEntity, {
    select: { id: true },
    where: { tagKey: identityKey(tag) },
  });
  if (item) return { item, lookAlikes: [] };
  const key = lookAlikeKey(tag);
  if (key === '') return { lookAlikes: [] };
  const lookAlikes = await manager.find(ItemEntity, {
    select: { id: true, tag: true, kind: true },
    where: { tagLookAlikeKey: key },
    order: { tagKey: 'ASC' },
    take: MOST_LOOK_ALIKES,
  });
  return { lookAlikes };
}
