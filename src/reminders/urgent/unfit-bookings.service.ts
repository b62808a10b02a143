import { Injectable } from '@nestjs/common';
import { Clock } from '../../clock.js';
import { BookingFlags, type BookingStanding } from '../../custody/flags.service.js';
import { jobsWithGear } from '../../custody/jobs-with-gear.js';
import { loadJob, type Job } from '../../jobs/load-job.js';
import { itemMarks } from '../../register/item-marks.js';
import { toDay } from '../../rules/calendar/day.js';
import { Reads } from '../../storage/reads.js';
import { bookingKey, type Replacement, type UnfitBooking } from './unfit-booking.js';

/** Asks of everything that is out or reserved whether it is still fit for its job. */
@Injectable()
export class UnfitBookings {
  constructor(
    private readonly reads: Reads,
    private readonly flags: BookingFlags,
    private readonly clock: Clock,
  ) {}

  /** Everything booked that is unfit as of now, by job. */
  async now(): Promise<UnfitBooking[]> {
    const { manager } = this.reads;
    const jobs: Job[] = [];
    for (const { id } of await jobsWithGear(manager)) jobs.push(await loadJob(manager, id));
    const standings = await this.flags.standings(manager, jobs);
    const unfit = jobs.flatMap((job) => this.ofJob(job, standings.get(job.id)));
    const marks = await itemMarks(manager, [...new Set(unfit.map(({ itemId }) => itemId))]);
    return unfit.flatMap((booking) => {
      const mark = marks.get(booking.itemId);
      return mark ? [{ ...booking, itemStoreId: mark.storeId }] : [];
    });
  }

  /** What could be taken instead on some jobs, by booking. */
  async replacements(jobIds: readonly number[]): Promise<ReadonlyMap<string, Replacement>> {
    const replacements = new Map<string, Replacement>();
    for (const jobId of jobIds) {
      const { unfit } = await this.flags.booking(jobId);
      for (const { item, replacement } of unfit)
        if (replacement) replacements.set(bookingKey({ jobId, itemId: item.itemId }), replacement);
    }
    return replacements;
  }

  private ofJob(job: Job, standing: BookingStanding | undefined): Omit<UnfitBooking, 'itemStoreId'>[] {
    const { id: jobId, reference, name: jobName, storeId: jobStoreId, store } = job;
    const today = this.clock.today(store.timeZone);
    return (standing?.check.unfit ?? []).map(({ row, refusals }) => ({
      ...{ jobId, reference, jobName, jobStoreId, today, refusals },
      from: toDay(row.fromDay),
      to: toDay(row.toDay),
      out: row.state === 'out',
      itemId: row.itemId,
      tag: row.tag,
      kind: row.kind,
    }));
  }
}
