import { read } from './api.js';
import type { Me, PhoneBundle, PhoneJob } from './contract.js';
import {
  forgetBegun,
  forgetOld,
  keepBegun,
  saveCheck,
  tryAgain,
  type NewCheck,
  type NewPhoto,
} from './queue.js';
import {
  keepThing,
  openStore,
  thing,
  type BegunCheck,
  type KeptBundle,
  type KeptThings,
  type PhoneStore,
  type SavedCheck,
  type SavedPhoto,
} from './store.js';
import { sendWaiting, type Halt } from './sync.js';

/** What the store of this phone holds. */
interface Kept {
  readonly me: Me | undefined;
  readonly jobs: KeptThings['jobs'] | undefined;
  readonly bundles: readonly KeptBundle[];
  readonly checks: readonly SavedCheck[];
  readonly photos: readonly SavedPhoto[];
  /** What was begun and not saved, as it was when a view was last opened. */
  readonly begun: readonly BegunCheck[];
  readonly lastSentAt: string | undefined;
}

/** All that the views show. */
export interface Snapshot extends Kept {
  readonly isSending: boolean;
  readonly halt: Halt | undefined;
  /** Why the last look-up of jobs or of a job gave nothing new. */
  readonly notFetched: string | undefined;
}

/** What this phone holds, and what can be done with it. Other pages of the same browser are told of changes. */
export class Phone {
  private readonly others = new BroadcastChannel('tackleroom-phone');
  private readonly listeners = new Set<() => void>();
  snapshot: Snapshot;

  private constructor(
    private readonly store: PhoneStore,
    kept: Kept,
  ) {
    this.snapshot = { ...kept, isSending: false, halt: undefined, notFetched: undefined };
    this.others.onmessage = () => void this.reload();
  }

  /** Opens the store of this phone; `onBlocked` is called while another page keeps it from opening. */
  static async open(onBlocked: () => void): Promise<Phone> {
    const store = await openStore(onBlocked);
    await forgetOld(store, Date.now());
    return new Phone(store, await readAll(store));
  }

  /** Calls back after every change, until the function that it gives is called. */
  onChange(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** True while anything may still be sent. */
  get hasWaiting(): boolean {
    const { checks, photos } = this.snapshot;
    return [...checks, ...photos].some(({ sending }) => sending === 'waiting');
  }

  /**
   * Fetches who is signed in, the jobs of today, and all of the jobs that are not on this phone yet, where the server
   * can be reached: a crew that has not opened its job at the office must not stand in the hall without it.
   */
  async fetchJobs(): Promise<void> {
    await this.fetchMe();
    const fetchedAt = new Date().toISOString();
    const answer = await read<readonly PhoneJob[]>('/api/phone/jobs');
    if (answer.kind === 'taken') await keepThing(this.store, 'jobs', { jobs: answer.body, fetchedAt });
    this.noteFetch(answer);
    await this.reload();
    if (answer.kind !== 'taken') return;
    const kept = new Set(this.snapshot.bundles.map(({ id }) => id));
    for (const { id } of answer.body) if (!kept.has(id)) await this.fetchBundle(id);
  }

  /** Fetches who is signed in and all of a job that is needed without a signal, where the server can be reached. */
  async fetchJob(id: number): Promise<void> {
    await this.fetchMe();
    await this.fetchBundle(id);
  }

  /**
   * Saves a check with its photos on this phone, and then tries to send.
   * @throws StoreFull when there is no room; nothing that was saved before is lost.
   */
  async save(check: Omit<NewCheck, 'madeBy'>, photos: readonly NewPhoto[]): Promise<void> {
    const { me } = this.snapshot;
    if (!me) throw new Error('Nobody has signed in on this phone yet.');
    await saveCheck(this.store, { ...check, madeBy: me }, photos);
    await this.reloadEverywhere();
    void navigator.storage.persist();
  }

  /**
   * Keeps what was begun of a check, so that it outlives the page.
   * @throws StoreFull when there is no room; what was kept of it before stays.
   */
  async keepBegun(begun: Omit<BegunCheck, 'personId'>): Promise<void> {
    const { me } = this.snapshot;
    if (me) await keepBegun(this.store, { ...begun, personId: me.id });
  }

  /** Forgets what was begun of a check. */
  async forgetBegun(begun: BegunCheck): Promise<void> {
    await forgetBegun(this.store, begun);
    await this.reloadEverywhere();
  }

  /** Reads anew what this phone holds, here and in the other pages of the browser. */
  async reloadEverywhere(): Promise<void> {
    await this.reload();
    this.others.postMessage('changed');
  }

  /** Sends what waits; gives true when it got through, and fetches anew the jobs whose checks went. */
  async sendNow(): Promise<boolean> {
    if (this.snapshot.isSending) return false;
    this.change({ isSending: true });
    try {
      const result = await sendWaiting(this.store, () => void this.reloadEverywhere());
      if (result) this.change({ halt: result.halt });
      if (result && result.sent > 0) await Promise.all(this.openJobs().map((id) => this.fetchBundle(id)));
      return result?.halt === undefined;
    } finally {
      this.change({ isSending: false });
      await this.reloadEverywhere();
    }
  }

  /** Puts what the server refused back in the queue. */
  async tryAgain(): Promise<void> {
    await tryAgain(this.store);
    await this.reloadEverywhere();
  }

  private async fetchMe(): Promise<void> {
    const answer = await read<Me>('/api/phone/me');
    if (answer.kind === 'taken') await keepThing(this.store, 'me', answer.body);
  }

  private async fetchBundle(id: number): Promise<void> {
    const fetchedAt = new Date().toISOString();
    const answer = await read<PhoneBundle>(`/api/phone/jobs/${id}`);
    if (answer.kind === 'taken') await this.store.put('bundles', { id, bundle: answer.body, fetchedAt });
    this.noteFetch(answer);
    await this.reload();
  }

  private openJobs(): readonly number[] {
    const withChecks = new Set(this.snapshot.checks.map(({ body }) => body.jobId));
    return this.snapshot.bundles.map(({ id }) => id).filter((id) => withChecks.has(id));
  }

  private noteFetch(answer: { kind: string; words?: string }): void {
    if (answer.kind === 'signInFirst') this.change({ halt: { kind: 'signInFirst' } });
    else if (answer.kind === 'taken' && this.snapshot.halt?.kind !== 'otherPerson')
      this.change({ halt: undefined });
    this.change({ notFetched: answer.kind === 'taken' ? undefined : answer.words });
  }

  private async reload(): Promise<void> {
    this.change(await readAll(this.store));
  }

  private change(part: Partial<Snapshot>): void {
    this.snapshot = { ...this.snapshot, ...part };
    for (const listener of this.listeners) listener();
  }
}

/** What is kept, and nothing of what goes on: that may change while this reads. */
async function readAll(store: PhoneStore): Promise<Kept> {
  const [me, jobs, lastSentAt] = await Promise.all([
    thing(store, 'me'),
    thing(store, 'jobs'),
    thing(store, 'lastSentAt'),
  ]);
  const [bundles, checks, photos, begun] = await Promise.all([
    store.getAll('bundles'),
    store.getAll('checks'),
    store.getAll('photos'),
    store.getAll('begun'),
  ]);
  return { me, jobs, lastSentAt, bundles, checks, photos, begun };
}
