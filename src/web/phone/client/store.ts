import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { CheckBody, CheckReceipt, Me, PhoneBundle, PhoneJob } from './contract.js';
import type { Draft } from './draft.js';

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

/** A check that someone began and has not saved yet, one for each person, job and item. */
export interface BegunCheck {
  readonly personId: number;
  readonly jobId: number;
  readonly itemId: number;
  /** When the first answer was given. */
  readonly startedAt: string;
  /** The checklist as it was asked. */
  readonly asked: string;
  readonly draft: Draft;
  /** How many photos were too large to be kept with it. */
  readonly photosLeftOut: number;
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
  begun: { key: [personId: number, jobId: number, itemId: number]; value: BegunCheck };
  things: { key: string; value: KeptThings[keyof KeptThings] };
}

export type PhoneStore = IDBPDatabase<PhoneSchema>;

/** A write that counts as done only once it is on the disk. */
export const ON_DISK = { durability: 'strict' } as const;

/**
 * Opens what this phone keeps. What an older page left is kept: each version only adds to the one before.
 * `onBlocked` is called while another page of the browser still holds an older version open.
 */
export async function openStore(onBlocked: () => void): Promise<PhoneStore> {
  const store = await openDB<PhoneSchema>('tackleroom-phone', 2, {
    upgrade(changed, from) {
      if (from < 1) {
        changed.createObjectStore('checks', { keyPath: 'seq', autoIncrement: true });
        changed.createObjectStore('photos', { keyPath: 'seq', autoIncrement: true });
        changed.createObjectStore('bundles', { keyPath: 'id' });
        changed.createObjectStore('things');
      }
      if (from < 2) changed.createObjectStore('begun', { keyPath: ['personId', 'jobId', 'itemId'] });
    },
    blocked: onBlocked,
  });
  // A newer page waits for this one to let go. All that was entered is kept, so starting anew loses nothing.
  store.addEventListener('versionchange', () => {
    store.close();
    location.reload();
  });
  return store;
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
