import { BookedItemEntity, type BookedState } from '../../src/custody/booked-item.entity.js';
import { JobEntity } from '../../src/jobs/job.entity.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import type { TestServer } from './test-server.js';

const AT = '2026-01-01T00:00:00.000Z';

/** Promises an item to a new job of its own, straight into the tables; gives the job's number. */
export async function promise(
  server: TestServer,
  row: { itemId: number; storeId: number; reference: string; from: string; to: string; state?: BookedState },
): Promise<number> {
  const { itemId, storeId, reference, from, to, state = 'reserved' } = row;
  return server.app.get(UnitOfWork).run(async (manager) => {
    const job = manager.create(JobEntity, {
      reference,
      referenceKey: reference,
      name: reference,
      site: 'A site',
      scheme: 'gb',
      method: 'tall-panel',
      storeId,
      loadOutDay: from,
      backDay: to,
      otherStores: true,
      counts: { crews: 1, liftersInUse: 1, panelsOnWheels: 1, trucksUnloading: 1, personsAloft: 0 },
      panels: [],
      parameters: [],
      truckTimes: [],
      adjustments: [],
      addedLines: [],
      choices: [],
      cancelled: false,
      createdAt: AT,
      updatedAt: AT,
      version: 1,
    });
    await manager.insert(JobEntity, job);
    const booked = {
      jobId: job.id,
      itemId,
      lineKey: 'lifter',
      fromDay: from,
      toDay: to,
      state,
      reservedAt: AT,
      version: 1,
    };
    await manager.insert(BookedItemEntity, booked);
    return job.id;
  });
}
