import { Injectable, Logger, type BeforeApplicationShutdown } from '@nestjs/common';
import { schedule, type ScheduledTask } from 'node-cron';
import { OneAtATime } from '../../storage/one-at-a-time.js';
import { DigestSweep } from '../digest/digest-sweep.service.js';
import { DueIndex } from '../due-index/due-index.service.js';
import { MailSender } from '../outbox/mail-sender.service.js';
import { OldMail } from '../outbox/old-mail.service.js';
import { UrgentSweep } from '../urgent/urgent-sweep.service.js';

/** Every five seconds. In UTC no hour is missing and none comes twice; when a digest is due is worked out by its sweep. */
const OFTEN = '*/5 * * * * *';

/** The name of the sweep among servers on one database. */
const SWEEP = 'tackleroom sweep';

/** Looks again and again what has to be told, and sends it. Nothing is lost between two looks, however far apart. */
@Injectable()
export class ReminderSchedule implements BeforeApplicationShutdown {
  private readonly logger = new Logger('Reminders');
  private task: ScheduledTask | undefined;
  private looking: Promise<void> | undefined;
  private sending: Promise<void> | undefined;

  constructor(
    private readonly index: DueIndex,
    private readonly urgent: UrgentSweep,
    private readonly digests: DigestSweep,
    private readonly sender: MailSender,
    private readonly oldMail: OldMail,
    private readonly oneAtATime: OneAtATime,
  ) {}

  /** Looks at once, and then until the application shuts down. */
  start(): void {
    const options = { timezone: 'UTC', noOverlap: true, logger: SILENT };
    this.task ??= schedule(OFTEN, () => this.look(), options);
    void this.look();
  }

  /**
   * Looks once and sends. Of several servers one decides what is told, while each sends. A step that fails is logged,
   * and keeps no other from being done.
   */
  async tick(): Promise<void> {
    await this.decide();
    await this.send();
  }

  /** Waits for the mail on its way: hanging up on a server that has taken it would send it twice. */
  async beforeApplicationShutdown(): Promise<void> {
    await this.task?.destroy();
    this.sender.stop();
    await this.looking;
    await this.sending;
  }

  /**
   * A look that takes long is not begun twice. It does not wait for the mail that it sends off: a slow mail server
   * keeps nobody from hearing of a danger that is found meanwhile.
   */
  private look(): Promise<void> {
    this.looking ??= this.decide()
      .then(() => void this.send())
      .finally(() => (this.looking = undefined));
    return this.looking;
  }

  private decide(): Promise<void> {
    return this.step('looking for what is due', () => this.oneAtATime.tryRun(SWEEP, () => this.sweep()));
  }

  private send(): Promise<void> {
    this.sending ??= this.step('sending mail', () => this.sender.sendDue()).finally(
      () => (this.sending = undefined),
    );
    return this.sending;
  }

  private async sweep(): Promise<void> {
    await this.step('bringing the due days up to date', () => this.index.refresh());
    await this.step('looking for dangers', () => this.urgent.run());
    await this.step('deciding on the digests', () => this.digests.run());
    await this.step('emptying old mail', () => this.oldMail.empty());
  }

  private async step(name: string, work: () => Promise<unknown>): Promise<void> {
    try {
      await work();
    } catch (error) {
      this.logger.error(`It went wrong while ${name}: ${wordsOf(error)}`);
    }
  }
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}

/** A look that is late or left out is no news: the next one sees the same. */
const SILENT = { info: () => {}, warn: () => {}, error: () => {}, debug: () => {} };
