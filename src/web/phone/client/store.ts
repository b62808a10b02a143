import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { CheckBody, CheckReceipt, Me, PhoneBundle, PhoneJob } from './contract.js';

/** How an entry of the queue stands: waiting, taken by the server, or refused by it and kept for someone to look at. */
export type Sending = 'waiting' | 'sent' | 'needsLook';

/** A check saved on this phone. `seq` is its place in the order of saving, and of sending. */
export interface SavedCheck {
  readonly seq: number;
  /** The Idempotency-Key: however often it is sent, it takes effect once. */
  readonly key: string;
  readonly madeBy: Me;
  readonly itemId: number;
  readonly tag: string;
  readonly body: CheckBody;
  /** Unfit blocks the item on this phone at once. */
  readonly outcome: 'fit' | 'unfit';
  /** What failed, in words. */
  readonly failed: readonly string[];
  readonly sending: Sending;
  readonly receipt?: CheckReceipt;
  /** The server's words when it refused the check. */
  readonly refusal?: string;
  readonly sentAt?: string;
}

/** A photo that waits; it is forgotten once the server has it. */
export interface SavedPhoto {
  readonly seq: number;
  readonly key: string;
  readonly checkKey: string;
  readonly madeBy: Me;
  readonly itemId: number;
  readonly tag: string;
  /** Key of the point of the checklist that it shows. */
  readonly point: string;
  readonly name: string;
  readonly image: Blob;
  readonly sending: Sending;
  readonly refusal?: string;
}

/** A job as it was last fetched. */
export interface KeptBundle {
  readonly id: number;
  readonly bundle: PhoneBundle;
  readonly fetchedAt: string;
}

/** Small things that are kept by name. */
export interface KeptThings {
  me: Me;
  jobs: { readonly jobs: readonly PhoneJob[]; readonly fetchedAt: string };
  lastSentAt: string;
}

interface PhoneSchema extends DBSchema {
  checks: { key: number; value: SavedCheck };
  photos: { key: number; value: SavedPhoto };
  bundles: { key: number; value: KeptBundle };
  things: { key: string; value: KeptThings[keyof KeptThings] };
}

export type PhoneStore = IDBPDatabase<PhoneSchema>;

/** A write that counts as done only once it is on the disk. */
export const ON_DISK = { durability: 'strict' } as const;

/** Opens what this phone keeps. */
export function openStore(): Promise<PhoneStore> {
  return openDB<PhoneSchema>('tackleroom-phone', 1, {
    upgrade(store) {
      store.createObjectStore('checks', { keyPath: 'seq', autoIncrement: true });
      store.createObjectStore('photos', { keyPath: 'seq', autoIncrement: true });
      store.createObjectStore('bundles', { keyPath: 'id' });
      store.createObjectStore('things');
    },
  });
}

/** A thing kept by name, or undefined where it was never kept. */
export async function thing<Name extends keyof KeptThings>(
  store: PhoneStore,
  name: Name,
): Promise<KeptThings[Name] | undefined> {
  const found = await store.get('things', name);
  return found as KeptThings[Name] | undefined;
}

/** Keeps a thing by name. */
export async function keepThing<Name extends keyof KeptThings>(
  store: PhoneStore,
  name: Name,
  value: KeptThings[Name],
): Promise<void> {
  await store.put('things', value, name);
}
