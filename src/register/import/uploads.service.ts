import { Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { Temporal } from 'temporal-polyfill';
import { LessThan } from 'typeorm';
import { Clock } from '../../clock.js';
import type { Actor } from '../../people/actor.js';
import { Problem } from '../../problem.js';
import { Reads } from '../../storage/reads.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import { UploadEntity } from '../upload.entity.js';

/** How long a file waits for the storeman's choice. */
const KEPT_HOURS = 24;

/** A file that waits for the storeman's choice. */
export interface Upload {
  readonly id: string;
  readonly fileName: string;
  readonly bytes: Buffer;
}

/** Files handed over for import. They are scratch paper, no part of the register, and so stand outside the ledger. */
@Injectable()
export class Uploads {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly reads: Reads,
    private readonly clock: Clock,
  ) {}

  /** Keeps a file for a day, and throws away what has waited longer. */
  async keep(actor: Actor, file: { fileName: string; bytes: Buffer }): Promise<Upload> {
    const upload = { ...file, id: randomUUID() };
    const createdAt = this.clock.now();
    const row = {
      id: upload.id,
      personId: actor.id ?? 0,
      fileName: file.fileName.slice(0, 255),
      content: file.bytes.toString('base64'),
    };
    await this.unitOfWork.run(async (manager) => {
      await manager.delete(UploadEntity, { createdAt: LessThan(hoursBefore(createdAt, KEPT_HOURS)) });
      await manager.insert(UploadEntity, { ...row, createdAt });
    });
    return upload;
  }

  /**
   * A file that the person handed over.
   * @throws Problem `not_found`, also of another person's file and of one that has waited too long.
   */
  async get(actor: Actor, id: string): Promise<Upload> {
    const row = await this.reads.manager.findOneBy(UploadEntity, { id, personId: actor.id ?? 0 });
    if (!row || row.createdAt < hoursBefore(this.clock.now(), KEPT_HOURS)) {
      throw new Problem(
        'not_found',
        'The file is not here any more: it is kept for a day. Hand it over again.',
      );
    }
    return { id, fileName: row.fileName, bytes: Buffer.from(row.content, 'base64') };
  }
}

function hoursBefore(instant: string, hours: number): string {
  return Temporal.Instant.from(instant).subtract({ hours }).toString({ smallestUnit: 'millisecond' });
}
