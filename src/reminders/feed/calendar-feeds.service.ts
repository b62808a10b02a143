import { Injectable } from '@nestjs/common';
import { IsNull } from 'typeorm';
import { badInput } from '../../http/input.js';
import { Ledger } from '../../ledger/ledger.service.js';
import type { Actor } from '../../people/actor.js';
import { Problem } from '../../problem.js';
import { Reads } from '../../storage/reads.js';
import { findStore } from '../../stores/find-store.js';
import { CalendarFeedEntity } from './calendar-feed.entity.js';
import type { CalendarFeedView, NewCalendarFeedDto } from './calendar-feeds.dto.js';
import { newSecret, secretHash } from './feed-secret.js';

/** More than all the calendars that one person has; a program gone wild makes no more. */
export const MOST_FEEDS = 20;

/** A feed with its secret, which is known at this moment only. */
export interface MadeFeed {
  readonly id: number;
  readonly storeId: number | null;
  readonly secret: string;
}

/** Secret addresses for calendar programs: makes, lists and revokes them. */
@Injectable()
export class CalendarFeeds {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
  ) {}

  /** One's own feeds that are open, the newest first; a manager's list holds everyone's. */
  async list(actor: Actor): Promise<CalendarFeedView[]> {
    const rows = await this.reads.manager.find(CalendarFeedEntity, {
      where: { revokedAt: IsNull(), ...(isManager(actor) ? {} : { personId: ownId(actor) }) },
      relations: { person: true, store: true },
      order: { id: 'DESC' },
    });
    return rows.map(({ id, personId, person, storeId, store, createdAt }) => ({
      id,
      personId,
      personName: person?.name ?? '',
      storeId,
      storeName: store?.name ?? null,
      createdAt,
    }));
  }

  /**
   * Makes a feed of one's own. The secret that it gives is told once and not kept.
   * @throws Problem `bad_input` of an unknown store, `not_allowed_now` when the person has 20 open feeds already.
   */
  make(
    actor: Actor,
    { storeId = null }: { storeId?: NewCalendarFeedDto['storeId'] | null },
  ): Promise<MadeFeed> {
    const personId = ownId(actor);
    const secret = newSecret();
    return this.ledger.change(actor, async (change) => {
      await change.lock('person', [personId]);
      if (storeId !== null && !(await findStore(change.manager, storeId)))
        throw badInput([{ field: 'storeId', message: `there is no store with the number ${storeId}` }]);
      const open = await change.manager.countBy(CalendarFeedEntity, { personId, revokedAt: IsNull() });
      if (open >= MOST_FEEDS)
        throw new Problem('not_allowed_now', `You have ${open} calendar feeds. Revoke one that is not used.`);
      const row = change.manager.create(CalendarFeedEntity, {
        secretHash: secretHash(secret),
        personId,
        storeId,
        createdAt: change.at,
        revokedAt: null,
      });
      await change.manager.insert(CalendarFeedEntity, row);
      const detail = { feedId: row.id, storeId };
      change.note({ action: 'person.calendarMade', subjectKind: 'person', subjectId: personId, detail });
      return { id: row.id, storeId, secret };
    });
  }

  /**
   * Takes an address away for good: one's own, or for a manager anybody's.
   * @throws Problem `not_found`, also of another's feed; `not_allowed_now` of one that was revoked before.
   */
  revoke(actor: Actor, id: number): Promise<void> {
    return this.ledger.change(actor, async (change) => {
      await change.lock('calendar_feed', [id]);
      const feed = await change.manager.findOneBy(CalendarFeedEntity, { id });
      if (!feed || !(isManager(actor) || feed.personId === actor.id))
        throw new Problem('not_found', `You have no calendar feed with the number ${id}.`);
      if (feed.revokedAt !== null)
        throw new Problem('not_allowed_now', `Calendar feed ${id} is revoked already.`);
      await change.manager.update(CalendarFeedEntity, { id }, { revokedAt: change.at });
      const { personId, storeId } = feed;
      const detail = { feedId: id, storeId };
      change.note({ action: 'person.calendarRevoked', subjectKind: 'person', subjectId: personId, detail });
    });
  }
}

function isManager({ roles }: Actor): boolean {
  return roles.includes('manager');
}

/** Whoever is signed in has an account; only Tackleroom itself has none. */
function ownId({ id }: Actor): number {
  if (id === null) throw new Error('Tackleroom itself reads no calendar.');
  return id;
}
