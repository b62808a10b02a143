import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { sourceTitle } from '../catalogue/source-title.js';
import { Clock } from '../clock.js';
import { bookedItems, isLive, type BookedItem } from '../custody/booked-items.js';
import { jobsWithGear } from '../custody/jobs-with-gear.js';
import { jobLines } from '../jobs/job-lines.js';
import { loadJob, type Job } from '../jobs/load-job.js';
import { itemMarks, itemsTaggedLike, type ItemMarks } from '../register/item-marks.js';
import { CONDITION_WORDS, CURRENCY_WORDS } from '../register/item-words.js';
import { Standings, type Standing } from '../register/standings.service.js';
import { FIGURE_UNITS } from '../rules/checks/checklist.js';
import { identityKey } from '../rules/text/look-alike.js';
import { Reads } from '../storage/reads.js';
import { day } from '../web/sentences/words.js';
import { CoverageService } from './coverage.service.js';
import type {
  ChecklistView,
  PhoneBundleView,
  PhoneItemView,
  PhoneJobView,
  TagAnswerView,
} from './phone.dto.js';

const MOST_CANDIDATES = 20;

/** Gives a phone what it needs on site, with a network or without. */
@Injectable()
export class PhoneService {
  constructor(
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
    private readonly standings: Standings,
    private readonly coverage: CoverageService,
  ) {}

  /** The jobs that have gear out, or gear reserved and today among their days. */
  async jobs(): Promise<PhoneJobView[]> {
    const jobs = await jobsWithGear(this.reads.manager);
    return jobs.flatMap(({ timeZone, ...job }) => {
      const today = this.clock.today(timeZone);
      return job.out > 0 || (job.loadOutDay <= today && today <= job.backDay) ? [job] : [];
    });
  }

  /** All that is needed for the checks of a job. @throws Problem `not_found`. */
  async bundle(jobId: number): Promise<PhoneBundleView> {
    const { manager } = this.reads;
    const job = await loadJob(manager, jobId);
    const rows = (await bookedItems(manager, [jobId])).filter(isLive);
    return {
      job: phoneJob(job, rows),
      today: this.clock.today(job.store.timeZone),
      madeAt: this.clock.now(),
      timeZone: job.store.timeZone,
      units: FIGURE_UNITS,
      checklists: this.checklists(rows),
      items: await this.items(job, rows),
    };
  }

  /**
   * What a tag means. It is never guessed: where no item carries it, or several read alike on worn metal, the
   * candidates are given for a person to choose from.
   */
  async tagged(tag: string): Promise<TagAnswerView> {
    const { manager } = this.reads;
    const ids = (await itemsTaggedLike(manager, tag)).slice(0, MOST_CANDIDATES);
    const key = identityKey(tag);
    const candidates = [...(await itemMarks(manager, ids)).values()]
      .map((mark) => this.asTagged(mark, key))
      .sort((one, other) => Number(other.exact) - Number(one.exact) || one.id - other.id);
    const [only] = candidates;
    return { match: candidates.length === 1 && only?.exact === true ? only : null, candidates };
  }

  private asTagged(
    { tagKey, storeId: _storeId, ...mark }: ItemMarks,
    key: string,
  ): TagAnswerView['candidates'][number] {
    return { ...mark, exact: tagKey === key, kindName: this.catalogue.kind(mark.kind).name };
  }

  private checklists(rows: readonly BookedItem[]): ChecklistView[] {
    return [...new Set(rows.map(({ kind }) => kind))].map((key) => {
      const { kind, name, plural, checklist } = this.catalogue.kind(key);
      const limits = checklist.flatMap(({ criteria }) => criteria.map(({ source }) => source.key));
      const sources = [...new Set(limits)].map((source) => {
        return { key: source, title: sourceTitle(this.catalogue.source(source)) };
      });
      return { kind, name, plural, points: checklist, sources };
    });
  }

  private async items(job: Job, rows: readonly BookedItem[]): Promise<PhoneItemView[]> {
    const { manager } = this.reads;
    const marks = await itemMarks(
      manager,
      rows.map(({ itemId }) => itemId),
    );
    const standings = await this.standings.load(manager, [...marks.values()]);
    const states = await this.coverage.statesToday(job, rows);
    const result = jobLines(job, this.catalogue);
    const labels = new Map(result.ok ? result.lines.map(({ key, label }) => [key, label]) : []);
    return rows.flatMap(({ itemId, lineKey, kind, state }) => {
      const [mark, check] = [marks.get(itemId), states.get(itemId)];
      if (!mark || !check) return [];
      const { id, tag, serial, maker, condition } = mark;
      const lineLabel = labels.get(lineKey) ?? this.catalogue.kind(kind).name;
      const standing = standings.get(id);
      const stands = {
        condition,
        currency: standing?.currency ?? ('neverExamined' as const),
        standing: standingWords(mark, standing),
      };
      return [{ id, tag, serial, maker, kind, lineKey, lineLabel, held: state, ...stands, check }];
    });
  }
}

function phoneJob({ store, ...job }: Job, rows: readonly BookedItem[]): PhoneJobView {
  const { id, reference, name, site, loadOutDay, backDay } = job;
  const out = rows.filter(({ state }) => state === 'out').length;
  const held = { out, reserved: rows.length - out };
  return { id, reference, name, site, loadOutDay, backDay, storeName: store.name, ...held };
}

function standingWords({ condition }: ItemMarks, standing: Standing | undefined): string {
  if (condition !== 'inService' || !standing) return CONDITION_WORDS[condition].word;
  const { currency, report } = standing;
  const { word } = CURRENCY_WORDS[currency];
  return report.dueOn === undefined ? word : `${word}, examination due ${day(report.dueOn)}`;
}
