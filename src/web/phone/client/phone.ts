import { read } from './api.js';
import type { Me, PhoneBundle, PhoneJob } from './contract.js';
import { forgetOld, saveCheck, tryAgain, type NewCheck, type NewPhoto } from './queue.js';
import {
  keepThing,
  openStore,
  thing,
  type KeptBundle,
  type KeptThings,
  type PhoneStore,
  type SavedCheck,
  type SavedPhoto,
} from './store.js';
import { sendWaiting, type Halt } from './sync.js';

/** All that the views show. */
export interface Snapshot {
  readonly me: Me | undefined;
  readonly jobs: KeptThings['jobs'] | undefined;
  readonly bundles: readonly KeptBundle[];
  readonly checks: readonly SavedCheck[];
  readonly photos: readonly SavedPhoto[];
  readonly lastSentAt: string | undefined;
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
    kept: Snapshot,
  ) {
    this.snapshot = kept;
    this.others.onmessage = () => void this.reload();
  }

  /** Opens the store of this phone. */
  static async open(): Promise<Phone> {
    const store = await openStore();
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

  /** Fetches who is signed in and the jobs of today, where the server can be reached. */
  async fetchJobs(): Promise<void> {
    const me = await read<Me>('/api/phone/me');
    if (me.kind === 'taken') await keepThing(this.store, 'me', me.body);
    const fetchedAt = new Date().toISOString();
    const answer = await read<readonly PhoneJob[]>('/api/phone/jobs');
    if (answer.kind === 'taken') await keepThing(this.store, 'jobs', { jobs: answer.body, fetchedAt });
    this.noteFetch(answer);
    await this.reload();
  }

  /** Fetches all of a job that is needed without a signal, where the server can be reached. */
  async fetchJob(id: number): Promise<void> {
    const fetchedAt = new Date().toISOString();
    const answer = await read<PhoneBundle>(`/api/phone/jobs/${id}`);
    if (answer.kind === 'taken') await this.store.put('bundles', { id, bundle: answer.body, fetchedAt });
    this.noteFetch(answer);
    await this.reload();
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

  /** Sends what waits; gives true when it got through, and fetches anew the jobs whose checks went. */
  async sendNow(): Promise<boolean> {
    if (this.snapshot.isSending) return false;
    this.change({ isSending: true });
    try {
      const result = await sendWaiting(this.store, () => void this.reloadEverywhere());
      if (result) this.change({ halt: result.halt });
      if (result && result.sent > 0) await Promise.all(this.openJobs().map((id) => this.fetchJob(id)));
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

  private async reloadEverywhere(): Promise<void> {
    await this.reload();
    this.others.postMessage('changed');
  }

  private async reload(): Promise<void> {
    const { isSending, halt, notFetched } = this.snapshot;
    const kept = await readAll(this.store);
    this.change({ ...kept, isSending, halt, notFetched });
  }

  private change(part: Partial<Snapshot>): void {
    this.snapshot = { ...this.snapshot, ...part };
    for (const listener of this.listeners) listener();
  }
}

async function readAll(store: PhoneStore): Promise<Snapshot> {
  const [me, jobs, lastSentAt] = await Promise.all([
    thing(store, 'me'),
    thing(store, 'jobs'),
    thing(store, 'lastSentAt'),
  ]);
  const [bundles, checks, photos] = await Promise.all([
    store.getAll('bundles'),
    store.getAll('checks'),
    store.getAll('photos'),
  ]);
  return {
    me,
    jobs,
    bundles,
    checks,
    photos,
    lastSentAt,
    isSending: false,
    halt: undefined,
    notFetched: undefined,
  };
}
