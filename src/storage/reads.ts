import type { EntityManager } from 'typeorm';

/** Where services read from: committed rows only. A write through it fails on SQLite and is a defect on PostgreSQL. */
export class Reads {
  constructor(readonly manager: EntityManager) {}
}
