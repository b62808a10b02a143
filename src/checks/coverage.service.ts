import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { bookedItems, isLive, type BookedItem } from '../custody/booked-items.js';
import { lastReleases } from '../inspections/last-releases.js';
import { jobLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { itemMarks, type ItemMarks } from '../register/item-marks.js';
import type { Day } from '../rules/calendar/day.js';
import { Reads } from '../storage/reads.js';
import { checkState } from './check-state.js';
import { coverageSentence } from './coverage-words.js';
import type { CoverageView, CoveredItemView, LineCoverageView } from './coverage.dto.js';
import { checksOfDay, countsForDay, type DayCheck } from './day-checks.js';

/** What the items of a job are judged by on a day. */
interface DayFacts {
  readonly day: Day;
  readonly today: Day;
  readonly checks: readonly DayCheck[];
  readonly marks: ReadonlyMap<number, ItemMarks>;
  readonly releases: ReadonlyMap<number, number>;
}

/** Tells how far a job's gear is checked on a day. Nothing of it is kept: it follows from the checks themselves. */
@Injectable()
export class CoverageService {
  constructor(
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /**
   * The coverage of a job on a day of its store, today when left out. The calendar day is taken as the shift: schemes
   * ask for a check in each shift and say nothing of when shifts begin.
   * @throws Problem `not_found`.
   */
  async ofJob(jobId: number, asked?: Day): Promise<CoverageView> {
    const job = await loadJob(this.reads.manager, jobId);
    const today = this.clock.today(job.store.timeZone);
    const day = asked ?? today;
    const booked = await bookedItems(this.reads.manager, [jobId]);
    const out = booked.filter((row) => wasOut(row, { day, today }));
    const rows = out.length > 0 || day !== today ? out : booked.filter(isLive);
    const facts = await this.facts(jobId, { day, today, rows });
    const onJob = new Set(booked.map(({ itemId }) => itemId));
    const strangers = facts.checks.map(({ itemId }) => itemId).filter((itemId) => !onJob.has(itemId));
    return {
      jobId,
      day,
      today,
      out: out.length > 0,
      lines: this.lines(job, rows, facts),
      others: [...new Set(strangers)].map((itemId) => coveredItem(itemId, facts)),
    };
  }

  /** How every item that is out or reserved for a job stands with its check of today, by item number. */
  async statesToday(job: Job, rows: readonly BookedItem[]): Promise<ReadonlyMap<number, CoveredItemView>> {
    const today = this.clock.today(job.store.timeZone);
    const facts = await this.facts(job.id, { day: today, today, rows });
    return new Map(rows.map(({ itemId }) => [itemId, coveredItem(itemId, facts)]));
  }

  private async facts(
    jobId: number,
    { day, today, rows }: { day: Day; today: Day; rows: readonly BookedItem[] },
  ): Promise<DayFacts> {
    const { manager } = this.reads;
    const booked = rows.map(({ itemId }) => itemId);
    const checks = await checksOfDay(manager, { jobId, itemIds: booked, day });
    const itemIds = [...new Set([...booked, ...checks.map(({ itemId }) => itemId)])];
    const marks = await itemMarks(manager, itemIds);
    return { day, today, checks, marks, releases: await lastReleases(manager, itemIds) };
  }

  private lines(job: Job, rows: readonly BookedItem[], facts: DayFacts): LineCoverageView[] {
    const result = jobLines(job, this.catalogue);
    const labels = new Map(result.ok ? result.lines.map(({ key, label }) => [key, label]) : []);
    const keys = [...new Set([...labels.keys(), ...rows.map(({ lineKey }) => lineKey)])];
    return keys.flatMap((lineKey) => {
      const ofLine = rows.filter((row) => row.lineKey === lineKey);
      const [first] = ofLine;
      if (!first) return [];
      const { name, plural } = this.catalogue.kind(first.kind);
      const items = ofLine.map(({ itemId }) => coveredItem(itemId, facts));
      return [
        {
          lineKey,
          label: labels.get(lineKey) ?? name,
          sentence: coverageSentence(items, { plural, day: facts.day, today: facts.today }),
          checked: items.filter(({ state }) => state === 'checked').length,
          of: items.length,
          items,
        },
      ];
    });
  }
}

/** Whether an item was on the job on a day. Of today, what is out now; what came back today is not checked any more. */
function wasOut({ state, fromDay, toDay }: BookedItem, { day, today }: { day: Day; today: Day }): boolean {
  if (fromDay > day) return false;
  if (state === 'out') return true;
  return day < today && (state === 'back' || state === 'missing') && day <= toDay;
}

function coveredItem(itemId: number, { day, today, checks, marks, releases }: DayFacts): CoveredItemView {
  const mark = marks.get(itemId);
  const own = checks.filter((check) => check.itemId === itemId);
  const condition = mark?.condition ?? 'inService';
  const counted = own.filter(countsForDay);
  const last = counted.at(-1) ?? own.at(-1);
  return {
    itemId,
    tag: mark?.tag ?? '',
    kind: mark?.kind ?? '',
    state: checkState(counted, {
      condition: day === today ? condition : undefined,
      releasedBy: releases.get(itemId) ?? 0,
    }),
    condition,
    ...(last && {
      checkedAt: last.checkedAt,
      checkedBy: last.checkedBy,
      clockDoubtful: last.clockDoubtful,
    }),
  };
}
