import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { Clock } from '../../clock.js';
import { MAIL_LINE, type MailLine } from './mail-line.js';
import { MailQueue } from './mail-queue.service.js';
import { isServerFault, later } from './next-try.js';

/** So many mails are on their way at once. */
const LANES = 2;

/** How long a mail server that cannot be used is left alone. */
const REST_MS = 60_000;

/** Hands the mail of the outbox to the mail server, one after another in each lane. */
@Injectable()
export class MailSender implements OnApplicationShutdown {
  private freeing: Promise<void> | undefined;
  private stopped = false;
  /** Since when the mail server is left alone; undefined while it is not. */
  private restingSince: string | undefined;

  constructor(
    private readonly queue: MailQueue,
    private readonly clock: Clock,
    @Inject(MAIL_LINE) private readonly line: MailLine | undefined,
  ) {}

  /**
   * Sends what is due until nothing is, and gives how much the mail server took. A server that cannot be used ends
   * the run, and is left alone for a minute.
   */
  async sendDue(): Promise<number> {
    const { line } = this;
    if (!line || this.rests()) return 0;
    await this.freeOnce();
    this.restingSince = undefined;
    const lanes = await Promise.allSettled(Array.from({ length: LANES }, () => this.runLane(line)));
    return lanes.reduce((sum, lane) => sum + sentBy(lane), 0);
  }

  /** Lets each lane end the mail that it is at, and begin no other. */
  stop(): void {
    this.stopped = true;
  }

  onApplicationShutdown(): void {
    this.stop();
    this.line?.close();
  }

  /** Claims are freed once, before anything is in hand. What fails is tried again by the next run. */
  private freeOnce(): Promise<void> {
    this.freeing ??= this.queue.freeClaims().catch((error: unknown) => {
      this.freeing = undefined;
      throw error;
    });
    return this.freeing;
  }

  /** A clock that is set back meanwhile ends the rest. */
  private rests(): boolean {
    if (this.restingSince === undefined) return false;
    const now = this.clock.now();
    return now >= this.restingSince && now < later(this.restingSince, REST_MS);
  }

  private async runLane(line: MailLine): Promise<number> {
    for (let sent = 0; ;) {
      const mail = this.stopped || this.restingSince !== undefined ? undefined : await this.queue.claim();
      if (!mail) return sent;
      const delivery = await line.send(mail);
      await this.queue.settle(mail, delivery);
      if (delivery.fault === null) sent += 1;
      else if (isServerFault(delivery.fault)) this.restingSince = this.clock.now();
    }
  }
}

/** Both lanes have ended when either's failure is thrown. */
function sentBy(lane: PromiseSettledResult<number>): number {
  if (lane.status === 'rejected') throw lane.reason;
  return lane.value;
}
