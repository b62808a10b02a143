import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { expect } from 'vitest';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { Reads } from '../../src/storage/reads.js';

const OVERLAPS = `
  SELECT one.item_id FROM booked_item one JOIN booked_item two
  ON one.item_id = two.item_id AND one.id < two.id AND one.from_day <= two.to_day AND two.from_day <= one.to_day
  WHERE one.state IN ('reserved', 'out') AND two.state IN ('reserved', 'out')`;

/** Expects that no item is promised to two jobs on one day. */
export async function expectNoDoubleBooking(app: NestFastifyApplication): Promise<void> {
  expect(await app.get(Reads).manager.query(OVERLAPS)).toEqual([]);
}

/** Expects that the history is whole, and gives how many entries it has. */
export async function expectWholeLedger(app: NestFastifyApplication): Promise<number> {
  const { entries, fault } = await app.get(Ledger).verify();
  expect(fault).toBeUndefined();
  return entries;
}
