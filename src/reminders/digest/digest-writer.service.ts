import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { Day } from '../../rules/calendar/day.js';
import { isUniqueViolation } from '../../storage/engine-errors.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import type { DiaryEntry } from '../diary/diary-entry.js';
import { letter } from '../mails/letter.js';
import { Outbox } from '../outbox/post-mail.js';
import type { MailPerson } from '../preferences/mail-person.js';
import { digestContent } from './digest-model.js';
import { DigestRunEntity } from './digest-run.entity.js';
import type { HeardStore } from './heard-stores.js';
import { pastRuns } from './past-runs.js';
import type { StoreVisit } from './store-visits.js';
import { tellingStores, type StoreToday } from './telling-stores.js';
import { toldEntries, type TellingStore } from './told-entries.js';

/** Somebody whose digest time has come. */
export interface DigestReader {
  readonly person: MailPerson & { readonly address: string };
  readonly heard: readonly HeardStore[];
  /** The day at the first of the stores. */
  readonly today: Day;
}

/** What the digests of one sweep have in common. */
export interface DigestRound {
  readonly at: string;
  readonly entries: readonly DiaryEntry[];
  /** When items of the entries came to fall due on their days at their stores, by the numbers of the items. */
  readonly since: ReadonlyMap<number, string>;
  /** The visits to each store, by its number. */
  readonly visits: ReadonlyMap<number, readonly StoreVisit[]>;
  readonly stores: ReadonlyMap<number, StoreToday>;
  readonly kindName: (kind: string) => string;
  /** The address of the server, without a slash at its end. */
  readonly address: string;
}

/** Decides what one person is told on a day. */
@Injectable()
export class DigestWriter {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly outbox: Outbox,
  ) {}

  /**
   * Writes down that the digest of the day was decided and puts it in the outbox, in one transaction. True when there
   * was anything to say; false also when another server decided first.
   */
  async write(reader: DigestReader, round: DigestRound): Promise<boolean> {
    try {
      return await this.unitOfWork.run((manager) => this.decide(manager, reader, round));
    } catch (error) {
      if (isUniqueViolation(error, RUN_OF_DAY)) return false;
      throw error;
    }
  }

  private async decide(manager: EntityManager, reader: DigestReader, round: DigestRound): Promise<boolean> {
    const { person, heard, today } = reader;
    const { at, stores } = round;
    const { personId } = person;
    const run = manager.create(DigestRunEntity, {
      personId,
      onDay: today,
      decidedAt: at,
      told: [],
      mailId: null,
    });
    // First, so that of two servers the second waits here, and then finds that it comes too late.
    await manager.insert(DigestRunEntity, run);
    await this.outbox.replaceUnsent(manager, { personId, kind: 'digest', at });
    const past = await pastRuns(manager, { personId, before: today });
    const telling = tellingStores(heard, { stores, ...past });
    const mailId = await this.post(manager, { reader, round, telling });
    const told = telling.map(({ storeId, today: through, digest }) => ({
      storeId,
      through,
      leads: digest !== 'overdueOnly',
    }));
    await manager.update(DigestRunEntity, { id: run.id }, { told, mailId });
    return mailId !== null;
  }

  /** The number of the mail, or null where there is nothing to say. */
  private async post(
    manager: EntityManager,
    {
      reader,
      round,
      telling,
    }: { reader: DigestReader; round: DigestRound; telling: readonly TellingStore[] },
  ): Promise<number | null> {
    const { person, today } = reader;
    const { at, kindName, address } = round;
    const told = toldEntries(round.entries, telling, round.since);
    if (told.length === 0) return null;
    const visits = telling.flatMap(({ storeId }) => round.visits.get(storeId) ?? []);
    const content = digestContent({ told, visits, stores: telling, person, kindName, address });
    return this.outbox.post(manager, {
      kind: 'digest',
      subjectKey: `digest:${person.personId}:${today}`,
      ...letter(content, person),
      at,
    });
  }
}

const RUN_OF_DAY = { table: 'digest_run', columns: ['person_id', 'on_day'] };
