import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { JobBookings } from '../custody/job-bookings.service.js';
import { findTagged } from '../register/tagged-item.js';
import { badInput } from '../http/input.js';
import { refuseStale } from '../http/version.js';
import { Ledger } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { identityKey } from '../rules/text/look-alike.js';
import { isUniqueViolation } from '../storage/engine-errors.js';
import { Reads } from '../storage/reads.js';
import { StoresService } from '../stores/stores.service.js';
import { refuseImpossibleJob, jobWarnings } from './job-checks.js';
import type { LineFacts } from './job-lines.js';
import { JobEntity } from './job.entity.js';
import type { AddedLine } from './job-parts.js';
import type { AddedLineDto } from './job-parts.dto.js';
import type { ChangeJobDto, GearChoiceDto, JobView, NewJobDto } from './jobs.dto.js';
import { loadJob, type Job } from './load-job.js';

/** Jobs: what is to be installed where and when, which decides what gear is needed. */
@Injectable()
export class JobsService {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly stores: StoresService,
    private readonly catalogue: Catalogue,
    private readonly bookings: JobBookings,
    private readonly clock: Clock,
  ) {}

  /** @throws Problem `not_found`. */
  async get(id: number): Promise<JobView> {
    return this.asView(await loadJob(this.reads.manager, id));
  }

  /** The number of the item that carries a tag. @throws Problem `not_found`. */
  async itemIdOf(tag: string): Promise<number> {
    return (await findTagged(this.reads.manager, tag)).id;
  }

  /** What decides the gear lines of a job. @throws Problem `not_found`. */
  async facts(id: number): Promise<LineFacts> {
    return loadJob(this.reads.manager, id);
  }

  /** @throws Problem `bad_input` with every reason, `reference_taken`. */
  async create(actor: Actor, input: NewJobDto): Promise<JobView> {
    const { adjustments = [], addedLines = [], ...given } = input;
    const parts = { ...given, adjustments, addedLines: withKeys(addedLines) };
    await this.refuseImpossible(parts);
    return this.ledger.change(actor, async (change) => {
      const written = {
        choices: [],
        cancelled: false,
        createdAt: change.at,
        updatedAt: change.at,
        version: 1,
      };
      const row = change.manager.create(JobEntity, {
        ...parts,
        ...written,
        referenceKey: identityKey(parts.reference),
      });
      await change.manager.insert(JobEntity, row).catch(sayReferenceTaken(parts.reference));
      change.note({ action: 'job.created', subjectKind: 'job', subjectId: row.id, detail: parts });
      return this.asView(await loadJob(change.manager, row.id));
    });
  }

  /**
   * Changes a job. Its booking follows: promises move to the new days, and what is no longer fit is noted.
   * @throws Problem `not_found`, `changed_meanwhile`, `bad_input`, `reference_taken`, `not_allowed_now`.
   */
  async edit(
    actor: Actor,
    id: number,
    { version, input }: { version: number; input: ChangeJobDto },
  ): Promise<JobView> {
    const { addedLines, ...given } = input;
    const changed = { ...stated(given), ...(addedLines && { addedLines: withKeys(addedLines) }) };
    await this.refuseImpossible({ ...(await loadJob(this.reads.manager, id)), ...changed });
    return this.ledger.change(actor, async (change) => {
      await change.lock('job', [id]);
      const job = await loadJob(change.manager, id);
      refuseStale(`Job ${job.reference}`, { read: version, now: job.version });
      refuseCancelled(job);
      const { reference = job.reference } = changed;
      const set = {
        ...changed,
        referenceKey: identityKey(reference),
        updatedAt: change.at,
        version: version + 1,
      };
      await change.manager.update(JobEntity, { id }, set).catch(sayReferenceTaken(reference));
      change.note({ action: 'job.edited', subjectKind: 'job', subjectId: id, detail: changed });
      const next = await loadJob(change.manager, id);
      const windowMoved = next.loadOutDay !== job.loadOutDay || next.backDay !== job.backDay;
      await this.bookings.follow(change, next, { windowMoved });
      return this.asView(next);
    });
  }

  /**
   * Cancels a job and gives up what is reserved for it.
   * @throws Problem `not_found`, `changed_meanwhile`, `not_allowed_now` while gear is out.
   */
  async cancel(actor: Actor, id: number, { version }: { version: number }): Promise<JobView> {
    return this.ledger.change(actor, async (change) => {
      await change.lock('job', [id]);
      const job = await loadJob(change.manager, id);
      refuseStale(`Job ${job.reference}`, { read: version, now: job.version });
      refuseCancelled(job);
      await this.bookings.releaseAll(change, job);
      await change.manager.update(
        JobEntity,
        { id },
        { cancelled: true, updatedAt: change.at, version: version + 1 },
      );
      change.note({
        action: 'job.cancelled',
        subjectKind: 'job',
        subjectId: id,
        detail: { reference: job.reference },
      });
      return this.asView({ ...job, cancelled: true, version: version + 1 });
    });
  }

  /**
   * Keeps the storeman's word on one item in place of an earlier one; `none` takes it back.
   * @throws Problem `not_found`, `changed_meanwhile`, `bad_input` of a pin without a line or a choice without a reason.
   */
  async choose(
    actor: Actor,
    id: number,
    { version, input }: { version: number; input: GearChoiceDto },
  ): Promise<JobView> {
    const { itemId, choice, lineKey, reason = '' } = input;
    if (choice !== 'none' && reason.trim() === '')
      throw badInput([{ field: 'reason', message: 'say why, so that others understand it' }]);
    if (choice === 'pin' && !lineKey)
      throw badInput([{ field: 'lineKey', message: 'say which line to use it on' }]);
    return this.ledger.change(actor, async (change) => {
      await change.lock('job', [id]);
      const job = await loadJob(change.manager, id);
      refuseStale(`Job ${job.reference}`, { read: version, now: job.version });
      refuseCancelled(job);
      const others = job.choices.filter((other) => other.itemId !== itemId);
      const choices =
        choice === 'none'
          ? others
          : [...others, { itemId, choice, reason, ...(lineKey && choice === 'pin' && { lineKey }) }];
      await change.manager.update(JobEntity, { id }, { choices, updatedAt: change.at, version: version + 1 });
      change.note({
        action: 'job.gearChosen',
        subjectKind: 'job',
        subjectId: id,
        detail: { itemId, choice, lineKey, reason },
      });
      const next = await loadJob(change.manager, id);
      await this.bookings.follow(change, next, { windowMoved: false });
      return this.asView(next);
    });
  }

  private async refuseImpossible(job: Parameters<typeof refuseImpossibleJob>[0]): Promise<void> {
    const storeIds = (await this.stores.list()).map(({ id }) => id);
    refuseImpossibleJob(job, { catalogue: this.catalogue, storeIds });
  }

  private asView(job: Job): JobView {
    const { id, reference, name, site, scheme, method, storeId, loadOutDay, backDay, otherStores } = job;
    const { counts, panels, adjustments, addedLines, choices, cancelled, version } = job;
    const warnings = jobWarnings(job, this.clock.today(job.store.timeZone));
    const where = { id, reference, name, site, scheme, method, storeId, storeName: job.store.name };
    const when = { loadOutDay, backDay, otherStores, cancelled, version, warnings };
    return { ...where, ...when, counts, panels, adjustments, addedLines, choices };
  }
}

/** What the request states, without the fields it leaves out. */
function stated(input: Omit<ChangeJobDto, 'addedLines'>): Partial<Omit<NewJobDto, 'addedLines'>> {
  return Object.fromEntries(
    Object.entries(input).filter(([, value]) => value !== undefined && value !== null),
  );
}

/** Gives each line that was added without a key the next free one. */
function withKeys(lines: readonly AddedLineDto[]): AddedLine[] {
  const taken = new Set(lines.map(({ lineKey }) => lineKey));
  let number = 0;
  return lines.map(({ lineKey, ...line }) => {
    if (lineKey) return { ...line, lineKey };
    do number += 1;
    while (taken.has(`added${number}`));
    return { ...line, lineKey: `added${number}` };
  });
}

function refuseCancelled({ cancelled, reference }: Job): void {
  if (cancelled) throw new Problem('not_allowed_now', `Job ${reference} is cancelled.`);
}

function sayReferenceTaken(reference: string) {
  return (error: unknown): never => {
    if (!isUniqueViolation(error)) throw error;
    throw new Problem(
      'reference_taken',
      `'${reference}' is the number of another job, give or take case and spaces.`,
    );
  };
}
