import { In, type EntityManager } from 'typeorm';
import { BookedItemEntity } from './booked-item.entity.js';

/** A job that has items promised or out, with the days its gear is away. */
export interface JobWithGear {
  readonly id: number;
  readonly reference: string;
  readonly name: string;
  readonly site: string;
  readonly loadOutDay: string;
  readonly backDay: string;
  readonly storeName: string;
  readonly timeZone: string;
  readonly out: number;
  readonly reserved: number;
}

/** Every job that stands and has items out or reserved, by load-out day. */
export async function jobsWithGear(manager: EntityManager): Promise<JobWithGear[]> {
  const rows = await manager
    .createQueryBuilder(BookedItemEntity, 'row')
    .innerJoinAndSelect('row.job', 'job')
    .innerJoinAndSelect('job.store', 'store')
    .where({ state: In(['out', 'reserved']) })
    .andWhere('job.cancelled = :cancelled', { cancelled: false })
    .orderBy('job.loadOutDay')
    .addOrderBy('job.id')
    .getMany();
  const jobs = new Map<number, JobWithGear>();
  for (const { job, state } of rows) {
    if (!job?.store) continue;
    const { id, reference, name, site, loadOutDay, backDay, store } = job;
    const { out, reserved } = jobs.get(id) ?? { out: 0, reserved: 0 };
    const counts = state === 'out' ? { out: out + 1, reserved } : { out, reserved: reserved + 1 };
    const place = { storeName: store.name, timeZone: store.timeZone };
    jobs.set(id, { id, reference, name, site, loadOutDay, backDay, ...place, ...counts });
  }
  return [...jobs.values()];
}
