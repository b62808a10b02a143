import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { flagCount } from '../custody/check-booking.js';
import { BookingFlags, type BookingStanding } from '../custody/flags.service.js';
import { badInput } from '../http/input.js';
import { isDay } from '../rules/calendar/day.js';
import { Reads } from '../storage/reads.js';
import { JobEntity } from './job.entity.js';
import { jobState } from './job-state.js';
import type { JobListView, JobsQueryDto, JobSummaryView } from './jobs.dto.js';
import type { Job } from './load-job.js';

const USUAL_LIMIT = 20;

/** Where a page of the list ended. `upcoming` jobs run forward from `since`, past ones back from it. */
interface Cursor {
  readonly part: 'upcoming' | 'past';
  /** The day that parted past from upcoming when the first page was read. */
  readonly since: string;
  readonly day: string;
  readonly id: number;
}

/** The list of jobs, with how far the gear of each has come. */
@Injectable()
export class JobList {
  constructor(
    private readonly reads: Reads,
    private readonly flags: BookingFlags,
    private readonly clock: Clock,
  ) {}

  /**
   * A page of jobs: those not yet back first, by load-out day; then past ones, the latest first.
   * @throws Problem `bad_input` of a cursor that is none of ours.
   */
  async list({ after, limit = USUAL_LIMIT }: JobsQueryDto): Promise<JobListView> {
    const cursor = after === undefined ? undefined : readCursor(after);
    const since = cursor?.since ?? this.clock.today('UTC');
    const jobs: Job[] = [];
    if (cursor?.part !== 'past')
      jobs.push(...(await this.part({ part: 'upcoming', since, limit: limit + 1, cursor })));
    if (jobs.length <= limit) {
      const from = cursor?.part === 'past' ? cursor : undefined;
      jobs.push(...(await this.part({ part: 'past', since, limit: limit + 1 - jobs.length, cursor: from })));
    }
    const shown = jobs.slice(0, limit);
    const last = jobs.length > limit ? shown.at(-1) : undefined;
    return { jobs: await this.summaries(shown), ...(last && { next: cursorOf(last, since) }) };
  }

  private async part({
    part,
    since,
    limit,
    cursor,
  }: Pick<Cursor, 'part' | 'since'> & { limit: number; cursor: Cursor | undefined }): Promise<Job[]> {
    const [dayColumn, direction, beyond] =
      part === 'upcoming'
        ? (['job.loadOutDay', 'ASC', '>'] as const)
        : (['job.backDay', 'DESC', '<'] as const);
    const query = this.reads.manager
      .createQueryBuilder(JobEntity, 'job')
      .innerJoinAndSelect('job.store', 'store')
      .where(part === 'upcoming' ? 'job.backDay >= :since' : 'job.backDay < :since', { since })
      .orderBy(dayColumn, direction)
      .addOrderBy('job.id', direction)
      .limit(limit);
    if (cursor) {
      const { day, id } = cursor;
      query.andWhere(`(${dayColumn} ${beyond} :day OR (${dayColumn} = :day AND job.id ${beyond} :id))`, {
        day,
        id,
      });
    }
    return (await query.getMany()).flatMap((job) => (job.store ? [{ ...job, store: job.store }] : []));
  }

  private async summaries(jobs: readonly Job[]): Promise<JobSummaryView[]> {
    const open = jobs.filter(({ cancelled }) => !cancelled);
    const standings = await this.flags.standings(this.reads.manager, open);
    return jobs.map((job) => summary(job, standings.get(job.id)));
  }
}

function summary(job: Job, standing: BookingStanding | undefined): JobSummaryView {
  const { id, reference, name, site, loadOutDay, backDay, store } = job;
  const { state, booked } = jobState(job, standing?.rows ?? []);
  const figures = {
    state,
    booked,
    needed: standing?.needed ?? 0,
    flagged: standing ? flagCount(standing.check) : 0,
  };
  return { id, reference, name, site, loadOutDay, backDay, storeName: store.name, ...figures };
}

function cursorOf({ id, loadOutDay, backDay }: Job, since: string): string {
  return backDay >= since ? `upcoming.${since}.${loadOutDay}.${id}` : `past.${since}.${backDay}.${id}`;
}

function readCursor(text: string): Cursor {
  const [part, since = '', day = '', id = ''] = text.split('.');
  if ((part === 'upcoming' || part === 'past') && isDay(since) && isDay(day) && /^\d{1,9}$/.test(id)) {
    return { part, since, day, id: Number(id) };
  }
  throw badInput([{ field: 'after', message: 'use what the last page gave as next, as it is' }]);
}
