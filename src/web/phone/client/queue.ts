import type { CheckReceipt } from './contract.js';
import { stillCounts } from './begun-check.js';
import { ON_DISK, type BegunCheck, type PhoneStore, type SavedCheck, type SavedPhoto } from './store.js';

/** How long a check that the server has stays readable on the phone. */
const KEPT_DAYS = 7;
const DAY_MS = 86_400_000;

/** A check as it is handed over for saving. */
export type NewCheck = Omit<SavedCheck, 'seq' | 'key' | 'sending'>;

/** A shrunk photo of a check. */
export interface NewPhoto {
  /** Key of the point that it shows. */
  readonly point: string;
  readonly name: string;
  readonly image: Blob;
}

/** Thrown when the phone has no room left. What was saved before is untouched. */
export class StoreFull extends Error {}

/**
 * Saves a check with its photos in place of what was begun, all or nothing, and returns once they are on the disk.
 * @throws StoreFull when the phone has no room.
 */
export async function saveCheck(
  store: PhoneStore,
  check: NewCheck,
  photos: readonly NewPhoto[],
): Promise<void> {
  const key = crypto.randomUUID();
  const { madeBy, itemId, tag, body } = check;
  await sayWhenFull(async () => {
    const change = store.transaction(['checks', 'photos', 'begun'], 'readwrite', ON_DISK);
    const adding = [
      change.objectStore('begun').delete([madeBy.id, body.jobId, itemId]),
      change.objectStore('checks').add(withoutSeq<SavedCheck>({ ...check, key, sending: 'waiting' })),
      ...photos.map((photo) =>
        change.objectStore('photos').add(
          withoutSeq<SavedPhoto>({
            ...photo,
            key: crypto.randomUUID(),
            checkKey: key,
            madeBy,
            itemId,
            tag,
            sending: 'waiting',
          }),
        ),
      ),
    ];
    await Promise.all([...adding, change.done]);
  });
}

/**
 * Keeps what was begun, and returns once it is on the disk.
 * @throws StoreFull when the phone has no room.
 */
export async function keepBegun(store: PhoneStore, begun: BegunCheck): Promise<void> {
  await sayWhenFull(async () => {
    const change = store.transaction('begun', 'readwrite', ON_DISK);
    await Promise.all([change.store.put(begun), change.done]);
  });
}

/** Forgets what was begun. */
export async function forgetBegun(store: PhoneStore, begun: BegunCheck): Promise<void> {
  await store.delete('begun', [begun.personId, begun.jobId, begun.itemId]);
}

/** Notes that the server has the check, with its answer. The receipt is unknown where only the first answer told it. */
export async function noteSent(
  store: PhoneStore,
  check: SavedCheck,
  receipt: CheckReceipt | undefined,
  sentAt: string,
): Promise<void> {
  const { refusal: _mended, ...rest } = check;
  await store.put('checks', { ...rest, sending: 'sent', sentAt, ...(receipt ? { receipt } : {}) });
}

/** Keeps a check that the server refused, with the server's words. */
export async function noteRefused(store: PhoneStore, check: SavedCheck, refusal: string): Promise<void> {
  await store.put('checks', { ...check, sending: 'needsLook', refusal });
}

/** Forgets a photo that the server has. */
export async function forgetPhoto(store: PhoneStore, photo: SavedPhoto): Promise<void> {
  await store.delete('photos', photo.seq);
}

/** Keeps a photo that the server refused, with the server's words. */
export async function notePhotoRefused(store: PhoneStore, photo: SavedPhoto, refusal: string): Promise<void> {
  await store.put('photos', { ...photo, sending: 'needsLook', refusal });
}

/** Puts everything that needs a look back in the queue, at its old place. */
export async function tryAgain(store: PhoneStore): Promise<void> {
  const change = store.transaction(['checks', 'photos'], 'readwrite', ON_DISK);
  const [checks, photos] = [change.objectStore('checks'), change.objectStore('photos')];
  for (const check of await checks.getAll())
    if (check.sending === 'needsLook') await checks.put({ ...check, sending: 'waiting' });
  for (const photo of await photos.getAll())
    if (photo.sending === 'needsLook') await photos.put({ ...photo, sending: 'waiting' });
  await change.done;
}

/** Forgets checks that the server has had for a week, and begun ones that count no longer, so that the store does not fill up. */
export async function forgetOld(store: PhoneStore, now: number): Promise<void> {
  for (const check of await store.getAll('checks'))
    if (check.sentAt && now - Date.parse(check.sentAt) > KEPT_DAYS * DAY_MS)
      await store.delete('checks', check.seq);
  const zones = new Map((await store.getAll('bundles')).map(({ id, bundle }) => [id, bundle.timeZone]));
  for (const begun of await store.getAll('begun')) {
    const timeZone = zones.get(begun.jobId);
    if (!timeZone || !stillCounts(begun.startedAt, { now, timeZone })) await forgetBegun(store, begun);
  }
}

/** The store gives the next sequence number itself, to a value that has none. */
function withoutSeq<Saved extends { seq: number }>(value: Omit<Saved, 'seq'>): Saved {
  return value as Saved;
}

async function sayWhenFull(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    throw isFull(error) ? new StoreFull() : error;
  }
}

/** Some browsers end the whole change for want of room, and say so in its cause only. */
function isFull(error: unknown): boolean {
  return error instanceof DOMException && ['QuotaExceededError', 'AbortError'].includes(error.name);
}
