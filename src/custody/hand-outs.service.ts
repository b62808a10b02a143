import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { requireLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { GearFacts } from '../planner/gear-facts.service.js';
import { judge } from '../planner/judge-gear.js';
import { planInput } from '../planner/plan-input.js';
import { Problem } from '../problem.js';
import { toDay, type Day } from '../rules/calendar/day.js';
import type { Verdict } from '../rules/fitness/fitness.js';
import type { GearLine } from '../rules/lines/need.js';
import { isRaisedByTrigger } from '../storage/engine-errors.js';
import { BookedItemEntity } from './booked-item.entity.js';
import { asBookedItemView, bookedItems, type BookedItem } from './booked-items.js';
import type { BookedItemView, HandOutDto } from './booking.dto.js';
import { lockTagged, type TaggedItem } from '../register/tagged-item.js';
import { notFit, notOnBooking } from './hand-out-problems.js';
import { releaseRows } from './reservations.service.js';

/** What a hand-out decides on, read inside its change. */
interface Counter {
  readonly job: Job;
  readonly item: TaggedItem;
  readonly rows: readonly BookedItem[];
  readonly lines: readonly GearLine[];
  readonly today: Day;
  /** Asks whether the item is fit for a line, from today on if that is before the load-out day. */
  readonly ask: (line: GearLine) => Verdict;
}

/** Gives gear out of the store, one scanned tag at a time. */
@Injectable()
export class HandOuts {
  constructor(
    private readonly ledger: Ledger,
    private readonly facts: GearFacts,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /**
   * Hands out one item of the booking after asking again whether it is fit. With `insteadOf`, an item that is not on
   * the booking takes the place of one that is, if it is fit for its line.
   * @throws Problem `not_found`, `not_on_booking` with the swaps that could be made, `item_not_fit` with every refusal,
   * `not_allowed_now`.
   */
  async handOut(actor: Actor, jobId: number, { tag, insteadOf }: HandOutDto): Promise<BookedItemView> {
    return this.ledger.change(actor, async (change) => {
      await change.lock('job', [jobId]);
      const counter = await this.atCounter(change, jobId, tag);
      refuseClosedJob(counter);
      const own = counter.rows.find(({ itemId, state }) => itemId === counter.item.id && state !== 'missing');
      const lineKey = own
        ? await this.giveOwn(change, counter, own)
        : await this.swap(change, counter, insteadOf);
      const detail = { job: counter.job.reference, line: lineKey, on: counter.today };
      change.note({ action: 'item.handedOut', subjectKind: 'item', subjectId: counter.item.id, detail });
      const rows = await bookedItems(change.manager, [jobId]);
      const row = rows.findLast(({ itemId, state }) => itemId === counter.item.id && state === 'out');
      if (!row) throw new Error(`${counter.item.tag} was handed out but is not on the booking.`);
      return asBookedItemView(row);
    });
  }

  private async atCounter(change: Change, jobId: number, tag: string): Promise<Counter> {
    const job = await loadJob(change.manager, jobId);
    const item = await lockTagged(change, tag);
    const rows = await bookedItems(change.manager, [jobId]);
    const today = this.clock.today(job.store.timeZone);
    const { lines } = requireLines(job, this.catalogue);
    const [gear] = await this.facts.load(change.manager, { itemIds: [item.id] }, today);
    if (!gear) throw new Problem('not_found', `No item carries the tag '${tag}'.`);
    const input = planInput(job, { catalogue: this.catalogue, lines, gear: [gear], held: [], today });
    const window = { from: today < input.window.from ? today : input.window.from, to: input.window.to };
    return { job, item, rows, lines, today, ask: (line) => judge(gear, line, { ...input, window }) };
  }

  private async giveOwn(change: Change, counter: Counter, own: BookedItem): Promise<string> {
    if (own.state === 'out') {
      throw new Problem('not_allowed_now', `${own.tag} is out on job ${counter.job.reference} already.`);
    }
    const line = counter.lines.find(({ key }) => key === own.lineKey);
    if (!line) throw notOnBooking(counter, []);
    const verdict = counter.ask(line);
    if (!verdict.fit) throw notFit(counter, line, verdict);
    const fromDay = counter.today < own.fromDay ? counter.today : own.fromDay;
    const set = {
      state: 'out' as const,
      fromDay,
      toDay: counter.job.backDay,
      handedOutAt: change.at,
      settledAt: null,
      version: own.version + 1,
    };
    await change.manager.update(BookedItemEntity, { id: own.id }, set).catch(sayPromised(counter));
    return line.key;
  }

  private async swap(change: Change, counter: Counter, insteadOf: number | undefined): Promise<string> {
    const waiting = counter.rows.filter(({ state }) => state === 'reserved');
    if (insteadOf === undefined) throw this.refusedAtCounter(counter, waiting);
    const other = waiting.find(({ id }) => id === insteadOf);
    if (!other)
      throw new Problem(
        'not_found',
        `Job ${counter.job.reference} has no reserved item with the number ${insteadOf}.`,
      );
    const line = counter.lines.find(({ key }) => key === other.lineKey);
    if (!line) throw notOnBooking(counter, []);
    const verdict = counter.ask(line);
    if (!verdict.fit) throw notFit(counter, line, verdict);
    await releaseRows(change, counter.job, [other]);
    await change.manager
      .insert(BookedItemEntity, {
        jobId: counter.job.id,
        itemId: counter.item.id,
        lineKey: line.key,
        fromDay: counter.today < counter.job.loadOutDay ? counter.today : counter.job.loadOutDay,
        toDay: counter.job.backDay,
        state: 'out',
        reservedAt: change.at,
        handedOutAt: change.at,
        version: 1,
      })
      .catch(sayPromised(counter));
    return line.key;
  }

  /** Says on the spot what is wrong with the item at hand, and which booked items it could stand in for. */
  private refusedAtCounter(counter: Counter, waiting: readonly BookedItem[]): Problem {
    const lines = counter.lines.filter(
      ({ kind, key }) => kind === counter.item.kind && waiting.some((row) => row.lineKey === key),
    );
    const verdicts = lines.map((line) => ({ line, verdict: counter.ask(line) }));
    const fitLines = verdicts.filter(({ verdict }) => verdict.fit).map(({ line }) => line);
    const [first] = verdicts;
    if (first && fitLines.length === 0) return notFit(counter, first.line, first.verdict);
    const swaps = waiting.flatMap(({ id, tag, lineKey }) => {
      const line = fitLines.find(({ key }) => key === lineKey);
      return line ? [{ bookedItemId: id, tag, lineKey, label: line.label }] : [];
    });
    return notOnBooking(counter, swaps);
  }
}

function refuseClosedJob({ job, today }: Counter): void {
  if (job.cancelled) throw new Problem('not_allowed_now', `Job ${job.reference} is cancelled.`);
  if (toDay(job.backDay) < today) {
    throw new Problem(
      'not_allowed_now',
      `Job ${job.reference} should be back since ${job.backDay}. Move its back day first.`,
    );
  }
}

function sayPromised({ item, job }: Counter) {
  return (error: unknown): never => {
    if (!isRaisedByTrigger(error, 'double_booking')) throw error;
    throw new Problem(
      'not_allowed_now',
      `${item.tag} is promised to another job on a day before ${job.backDay}.`,
    );
  };
}
