import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Clock } from '../clock.js';
import type { Actor } from '../people/actor.js';
import { Reads } from '../storage/reads.js';
import { UnitOfWork } from '../storage/unit-of-work.js';
import { canonicalJson } from './canonical-json.js';
import { entryHash, findFault, type ChainEntry, type ChainFault, type SealedEntry } from './chain.js';
import { LedgerEntryEntity, LedgerHeadEntity } from './ledger.entity.js';
import { claimRequest, keepClaim } from './request-once.js';

/** One line for the history: what was done to what, with which figures. */
export interface Note {
  /** Such as `item.quarantined`. */
  readonly action: string;
  readonly subjectKind: 'item' | 'job' | 'store' | 'person' | 'register';
  readonly subjectId: number | string;
  readonly detail?: object;
}

/** What a use case works with while it changes something. */
export interface Change {
  readonly manager: EntityManager;
  readonly actor: Actor;
  /** The instant of the change, the same for everything in it. */
  readonly at: string;
  /** Locks rows until the change is done; see `UnitOfWork.lock`. */
  lock(table: string, ids: readonly number[]): Promise<void>;
  /** Adds a line to the history, written with the change or not at all. */
  note(note: Note): void;
}

const ENTRIES_AT_A_TIME = 1_000;

/** The only way to change what Tackleroom keeps: every change is written together with its lines of history. */
@Injectable()
export class Ledger {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly reads: Reads,
    private readonly clock: Clock,
  ) {}

  /**
   * Runs `job` in a transaction and appends its notes to the chain in the same transaction. A job that
   * finds nothing to change notes nothing, and must then have written nothing.
   */
  async change<T>(actor: Actor, job: (change: Change) => Promise<T>): Promise<T> {
    const result = await this.unitOfWork.run(async (manager) => {
      const at = this.clock.now();
      const notes: Note[] = [];
      await claimRequest(manager, at);
      const outcome = await job({
        manager,
        actor,
        at,
        lock: (table, ids) => this.unitOfWork.lock(manager, table, ids),
        note: (note) => notes.push(note),
      });
      if (notes.length > 0) await this.append(manager, { actor, at, notes });
      return outcome;
    });
    keepClaim();
    return result;
  }

  /** Checks every entry. Gives the first fault and how many entries stand in the history. */
  async verify(): Promise<{ entries: number; head: string; fault?: ChainFault }> {
    const head = await this.reads.manager.findOneByOrFail(LedgerHeadEntity, { id: 1 });
    const fault = await findFault(this.entriesInOrder(), head);
    return { entries: head.number, head: head.hash, ...(fault ? { fault } : {}) };
  }

  /** All entries as they were hashed, oldest first, read a thousand at a time. */
  async *entriesInOrder(): AsyncGenerator<SealedEntry> {
    for (let last = 0; ;) {
      const rows = await this.reads.manager
        .createQueryBuilder(LedgerEntryEntity, 'entry')
        .where('entry.number > :last', { last })
        .orderBy('entry.number')
        .limit(ENTRIES_AT_A_TIME)
        .getMany();
      for (const row of rows) yield asChainEntry(row);
      const end = rows.at(-1);
      if (!end) return;
      last = end.number;
    }
  }

  /** The newest entries, newest first; with a subject, only its own. */
  async newest(
    limit: number,
    subject?: { kind: Note['subjectKind']; id: number | string },
  ): Promise<SealedEntry[]> {
    const rows = await this.reads.manager.find(LedgerEntryEntity, {
      ...(subject ? { where: { subjectKind: subject.kind, subjectId: String(subject.id) } } : {}),
      order: { number: 'DESC' },
      take: limit,
    });
    return rows.map(asChainEntry);
  }

  /** Comes last in the transaction: on PostgreSQL the lock on the head is held until COMMIT, and everyone waits for it. */
  private async append(
    manager: EntityManager,
    { actor, at, notes }: { actor: Actor; at: string; notes: readonly Note[] },
  ): Promise<void> {
    await this.unitOfWork.lock(manager, 'ledger_head', [1]);
    let { number, hash } = await manager.findOneByOrFail(LedgerHeadEntity, { id: 1 });
    const rows = notes.map((note) => {
      number += 1;
      const entry = {
        ...describe(note),
        number,
        at,
        actorId: actor.id,
        actorName: actor.name,
        previousHash: hash,
      };
      hash = entryHash(entry);
      return { ...entry, detail: canonicalJson(entry.detail), hash };
    });
    for (let start = 0; start < rows.length; start += 50) {
      await manager.insert(LedgerEntryEntity, rows.slice(start, start + 50));
    }
    await manager.update(LedgerHeadEntity, { id: 1 }, { number, hash });
  }
}

function describe(note: Note): Pick<ChainEntry, 'action' | 'subjectKind' | 'subjectId' | 'detail'> {
  return {
    action: note.action,
    subjectKind: note.subjectKind,
    subjectId: String(note.subjectId),
    // Through JSON once, so that what is hashed is what will be read back: no undefined, no class.
    detail: JSON.parse(JSON.stringify(note.detail ?? {})),
  };
}

function asChainEntry({ detail, ...row }: LedgerEntryEntity): SealedEntry {
  return { ...row, detail: JSON.parse(detail) as unknown };
}
