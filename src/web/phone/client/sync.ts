import { read, send, sendForm, type Answer } from './api.js';
import type { CheckReceipt, Me } from './contract.js';
import { forgetPhoto, notePhotoRefused, noteRefused, noteSent } from './queue.js';
import { keepThing, type PhoneStore, type SavedCheck, type SavedPhoto } from './store.js';

/** Why the queue stands still, and what to do: nothing of it is lost meanwhile. */
export type Halt =
  | { readonly kind: 'unreachable'; readonly words: string }
  | { readonly kind: 'signInFirst' }
  /** What waits was saved by someone else than who is signed in now: it would go out under a wrong name. */
  | { readonly kind: 'otherPerson'; readonly names: readonly string[] };

/** What one go at the queue came to. */
export interface SendResult {
  readonly sent: number;
  readonly halt?: Halt;
}

/**
 * Sends what waits, in the order it was saved, one at a time: the checks first, then the photos. What the server
 * refuses is kept with its words, and the next goes on. Only one page of the browser sends at a time; undefined when
 * another one is at it.
 */
export async function sendWaiting(store: PhoneStore, onStep: () => void): Promise<SendResult | undefined> {
  return navigator.locks.request('tackleroom-send', { ifAvailable: true }, (lock) =>
    lock ? sendAll(store, onStep) : undefined,
  );
}

async function sendAll(store: PhoneStore, onStep: () => void): Promise<SendResult> {
  const asked = await read<Me>('/api/phone/me');
  if (asked.kind !== 'taken') return { sent: 0, halt: haltOf(asked) };
  const me = asked.body;
  await keepThing(store, 'me', me);
  let sent = 0;
  for (const step of [sendNextCheck, sendNextPhoto]) {
    for (;;) {
      const outcome = await step(store, me);
      if (outcome === 'nothingLeft') break;
      if (outcome !== 'done') return { sent, halt: outcome };
      sent += 1;
      onStep();
    }
  }
  const others = await waitingOfOthers(store, me);
  return others.length > 0 ? { sent, halt: { kind: 'otherPerson', names: others } } : { sent };
}

type Step = 'done' | 'nothingLeft' | Halt;

async function sendNextCheck(store: PhoneStore, me: Me): Promise<Step> {
  const check = (await store.getAll('checks')).find((each) => waitsFor(me, each));
  if (!check) return 'nothingLeft';
  const answer = await send<CheckReceipt>(`/api/items/${check.itemId}/checks`, check.key, check.body);
  if (answer.kind === 'refused') await noteRefused(store, check, answer.words);
  else if (answer.kind === 'taken' || answer.kind === 'hadBefore') {
    const sentAt = new Date().toISOString();
    await noteSent(store, check, answer.kind === 'taken' ? answer.body : undefined, sentAt);
    await keepThing(store, 'lastSentAt', sentAt);
  } else return haltOf(answer);
  return 'done';
}

/** A photo goes once its check is there; the photo of a refused check waits with it. */
async function sendNextPhoto(store: PhoneStore, me: Me): Promise<Step> {
  const checks = new Map((await store.getAll('checks')).map((check) => [check.key, check]));
  const photo = (await store.getAll('photos')).find(
    (each) => waitsFor(me, each) && (checks.get(each.checkKey)?.sending ?? 'sent') === 'sent',
  );
  if (!photo) return 'nothingLeft';
  const form = photoForm(photo, checks.get(photo.checkKey));
  const answer = await sendForm(`/api/items/${photo.itemId}/documents`, photo.key, form);
  if (answer.kind === 'refused') await notePhotoRefused(store, photo, answer.words);
  else if (answer.kind === 'taken' || answer.kind === 'hadBefore') {
    await forgetPhoto(store, photo);
    await keepThing(store, 'lastSentAt', new Date().toISOString());
  } else return haltOf(answer);
  return 'done';
}

function photoForm(photo: SavedPhoto, check: SavedCheck | undefined): FormData {
  const form = new FormData();
  form.set('kind', 'photo');
  if (check?.receipt) form.set('inspectionId', String(check.receipt.inspectionId));
  const defect = check?.receipt?.defects.find(({ point }) => point === photo.point);
  if (defect) form.set('defectId', String(defect.id));
  form.set('file', photo.image, photo.name);
  return form;
}

function waitsFor(me: Me, { sending, madeBy }: SavedCheck | SavedPhoto): boolean {
  return sending === 'waiting' && madeBy.id === me.id;
}

async function waitingOfOthers(store: PhoneStore, me: Me): Promise<readonly string[]> {
  const saved = [...(await store.getAll('checks')), ...(await store.getAll('photos'))];
  const others = saved.filter(({ sending, madeBy }) => sending === 'waiting' && madeBy.id !== me.id);
  return [...new Set(others.map(({ madeBy }) => madeBy.name))];
}

function haltOf(answer: Exclude<Answer<unknown>, { kind: 'taken' }>): Halt {
  if (answer.kind === 'signInFirst') return { kind: 'signInFirst' };
  return {
    kind: 'unreachable',
    words: 'words' in answer ? answer.words : 'The server gave no answer that can be used.',
  };
}
