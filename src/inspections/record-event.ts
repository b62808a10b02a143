import type { Change } from '../ledger/ledger.service.js';
import type { LockedItem } from '../register/item-condition.js';
import type { EventType } from '../rules/gear/gear.js';
import { GearEventEntity } from './gear-event.entity.js';

/** Something that happened to an item, as its reporter says. */
export interface SeenEvent {
  readonly type: EventType;
  readonly happenedOn: string;
  readonly remarks?: string | undefined;
}

/** Records something that happened to a locked item, inside a change. The rules then ask for a fresh examination. */
export async function recordEvent(
  change: Change,
  item: LockedItem,
  { type, happenedOn, remarks = '' }: SeenEvent,
): Promise<void> {
  const reported = { reportedBy: change.actor.id, recordedAt: change.at };
  const row = change.manager.create(GearEventEntity, {
    itemId: item.id,
    type,
    happenedOn,
    remarks,
    ...reported,
  });
  await change.manager.insert(GearEventEntity, row);
  const detail = { tag: item.tag, eventId: row.id, type, happenedOn, remarks };
  change.note({ action: 'event.recorded', subjectKind: 'item', subjectId: item.id, detail });
}
