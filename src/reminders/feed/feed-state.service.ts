import { Injectable } from '@nestjs/common';
import { Clock } from '../../clock.js';
import { Ledger } from '../../ledger/ledger.service.js';
import { Reads } from '../../storage/reads.js';
import { DueIndex } from '../due-index/due-index.service.js';
import type { FeedStore } from './feed-day.js';

/** Says whether anything has happened that a calendar could show. */
@Injectable()
export class FeedState {
  constructor(
    private readonly ledger: Ledger,
    private readonly index: DueIndex,
    private readonly reads: Reads,
    private readonly clock: Clock,
  ) {}

  /**
   * A text that is another whenever the calendar of the stores may be another. A calendar follows from what the history
   * has a line of, from the index of due days and from the days that the stores live on. Undefined while due days are
   * being worked out: each look may find more then.
   */
  async of(stores: readonly FeedStore[]): Promise<string | undefined> {
    const index = await this.index.state(this.reads.manager);
    if (index === undefined) return undefined;
    const [newest] = await this.ledger.newest(1);
    const days = stores.map(({ id, timeZone }) => `${id} ${this.clock.today(timeZone)}`);
    return [newest?.number ?? 0, index, ...days].join(' ');
  }
}
