import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { JobBookings } from '../custody/job-bookings.service.js';
import { findTagged } from '../register/tagged-item.js';
import { badInput } from '../http/input.js';
import { refuseStale } from '../http/version.js';
import { Ledger } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { identityKey } from '../rules/text/look-alike.js';
import { Reads } from '../storage/reads.js';
import { StoresService } from '../stores/stores.service.js';
import { refuseImpossibleJob, jobWarnings } from './job-checks.js';
import type { LineFacts } from './job-lines.js';
import {
  changesOf,
  refuseCancelled,
  refuseTakenReference,
  sayReferenceTaken,
  windowMoved,
  withKeys,
} from './job-change.js';
import { JobEntity } from './job.entity.js';
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
    const { adjustments = [], addedLines = [], parameters = [], truckTimes = [], ...given } = input;
    const parts = { ...given, parameters, truckTimes, adjustments, addedLines: withKeys(addedLines) };
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
    const changed = changesOf(input);
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
      await this.bookings.follow(change, next, { windowMoved: windowMoved(job, next) });
      return this.asView(next);
    });
  }

  /**
   * A job as it stands and as a change would leave it. Refuses all that `edit` would refuse, and writes nothing.
   * @throws Problem `not_found`, `changed_meanwhile`, `bad_input`, `reference_taken`, `not_allowed_now`.
   */
  async preview(
    id: number,
    { version, input }: { version: number; input: ChangeJobDto },
  ): Promise<{ now: Job; next: Job }> {
    const { manager } = this.reads;
    const now = await loadJob(manager, id);
    const changed = { ...now, ...changesOf(input) };
    await this.refuseImpossible(changed);
    refuseStale(`Job ${now.reference}`, { read: version, now: now.version });
    refuseCancelled(now);
    await refuseTakenReference(manager, changed);
    if (windowMoved(now, changed)) await this.bookings.refuseMove(manager, changed);
    return { now, next: { ...changed, store: await this.stores.get(changed.storeId) } };
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
    const { counts, panels, adjustments, addedLines, choices, cancelled, version, parameters, truckTimes } =
      job;
    const warnings = jobWarnings(job, this.clock.today(job.store.timeZone));
    const where = { id, reference, name, site, scheme, method, storeId, storeName: job.store.name };
    const when = { loadOutDay, backDay, otherStores, cancelled, version, warnings };
    return { ...where, ...when, counts, panels, parameters, truckTimes, adjustments, addedLines, choices };
  }
}
