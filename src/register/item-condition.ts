import type { EntityManager } from 'typeorm';
import type { Change } from '../ledger/ledger.service.js';
import { Problem } from '../problem.js';
import type { Day } from '../rules/calendar/day.js';
import type { Condition } from '../rules/gear/gear.js';
import { ItemEntity } from './item.entity.js';

/** An item as a change holds it: locked, and kept in step with what the change writes. */
export type LockedItem = ItemEntity;

/**
 * The item, locked for this change and read afresh.
 * @throws Problem `not_found`.
 */
export async function lockItem(change: Change, id: number): Promise<ItemEntity> {
  await change.lock('item', [id]);
  const item = await change.manager.findOneBy(ItemEntity, { id });
  if (!item) throw noSuchItem(id);
  return item;
}

/** The item as it is, without a lock. @throws Problem `not_found`. */
export async function readItem(manager: EntityManager, id: number): Promise<ItemEntity> {
  const item = await manager.findOneBy(ItemEntity, { id });
  if (!item) throw noSuchItem(id);
  return item;
}

/** @throws Problem `not_found` unless there is such an item. */
export async function requireItem(manager: EntityManager, id: number): Promise<void> {
  if (!(await manager.existsBy(ItemEntity, { id }))) throw noSuchItem(id);
}

/** The problem of an item that is not in the register. */
export function noSuchItem(id: number): Problem {
  return new Problem('not_found', `There is no item with the number ${id}.`);
}

/** @throws Problem `not_allowed_now` of an item that was scrapped: nothing is done with it any more. */
export function refuseScrapped({ tag, condition }: ItemEntity): void {
  if (condition === 'scrapped')
    throw new Problem('not_allowed_now', `${tag} is scrapped, and never comes back.`);
}

/** Changes columns of a locked item and counts its version on; `item` stays in step. */
export async function changeItem(
  change: Change,
  item: ItemEntity,
  columns: Partial<ItemEntity>,
): Promise<void> {
  const set = { ...columns, updatedAt: change.at, version: item.version + 1 };
  await change.manager.update(ItemEntity, { id: item.id }, set);
  Object.assign(item, set);
}

/**
 * Takes a locked item out of service, or from one condition out of service to another. Who reported it first and since
 * when stay on record until it is released, so that nobody can report anew and then release their own report.
 */
export async function takeOutOfService(
  change: Change,
  item: ItemEntity,
  { condition, reason, today }: { condition: Exclude<Condition, 'inService'>; reason: string; today: Day },
): Promise<void> {
  const first = item.condition === 'inService';
  await changeItem(change, item, {
    condition,
    conditionReason: reason,
    conditionReportedBy: first ? change.actor.id : item.conditionReportedBy,
    conditionSince: first ? today : item.conditionSince,
  });
  change.note({
    action: ACTIONS[condition],
    subjectKind: 'item',
    subjectId: item.id,
    detail: { tag: item.tag, reason },
  });
}

/** Puts a locked item back into service. Whether it may be is the caller's to decide. */
export async function returnToService(change: Change, item: ItemEntity, inspectionId: number): Promise<void> {
  const cleared = { conditionReason: null, conditionReportedBy: null, conditionSince: null };
  await changeItem(change, item, { condition: 'inService', ...cleared });
  change.note({
    action: 'item.released',
    subjectKind: 'item',
    subjectId: item.id,
    detail: { tag: item.tag, inspectionId },
  });
}

const ACTIONS: Readonly<Record<Exclude<Condition, 'inService'>, string>> = {
  quarantined: 'item.quarantined',
  underRepair: 'item.repairStarted',
  scrapped: 'item.scrapped',
};
