import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import type { Actor } from '../people/actor.js';
import { GearFacts } from '../planner/gear-facts.service.js';
import { noSuchItem, readItem } from '../register/item-condition.js';
import { Problem } from '../problem.js';
import type { Day } from '../rules/calendar/day.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import { completeReport } from '../rules/examination/complete-report.js';
import { nextExamination, type NextExamination } from '../rules/examination/next-due.js';
import type { ReportFacts } from '../rules/examination/draft.js';
import type { ReportParticulars } from '../rules/examination/report.js';
import { Reads } from '../storage/reads.js';
import { findStore } from '../stores/find-store.js';
import { draftOf } from './examination-draft.js';
import { gapSentence } from './examination-gap-words.js';
import type { NewExaminationDto } from './examinations.dto.js';
import { lastExamined } from './records-of-items.js';

/** A report that lacks nothing, and how its latest next day came about. */
export interface PreparedReport {
  readonly report: ReportParticulars;
  readonly next: NextExamination;
  readonly today: Day;
  /** The inspection rules of the store. */
  readonly scheme: SchemeDefinition;
}

/** Makes reports of what an examiner filled in, from facts read fresh: for the look before signing, and again when signing. */
@Injectable()
export class ExaminationDrafts {
  constructor(
    private readonly reads: Reads,
    private readonly gearFacts: GearFacts,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  /** The report as it would be signed now. @throws Problem `not_found`, `bad_input` that names every paragraph with a gap. */
  preview(actor: Actor, itemId: number, input: NewExaminationDto): Promise<PreparedReport> {
    return this.prepare(this.reads.manager, { actor, itemId, input });
  }

  /** The same inside a change, through its manager. */
  async prepare(
    manager: EntityManager,
    { actor, itemId, input }: { actor: Actor; itemId: number; input: NewExaminationDto },
  ): Promise<PreparedReport> {
    const { gear, scheme, today, marks } = await this.factsOf(manager, itemId);
    const draft = draftOf(input);
    const { defectDeadline, ...released } = gear;
    const kept = input.release === true || defectDeadline === undefined ? released : gear;
    const { occasion, defects = [], examinedOn = today } = draft;
    const next = nextExamination(kept, scheme, { examination: { examinedOn, occasion, defects }, today });
    const latestNext = next.latest === undefined ? {} : { latestNext: next.latest };
    const lastOnRecord = await onRecord(manager, itemId, { before: examinedOn, except: input.supersedesId });
    const facts = { today, examinerName: actor.name, marks, ...latestNext, ...lastOnRecord };
    const { report, gaps } = completeReport(draft, facts);
    if (report) return { report, next, today, scheme };
    const errors = gaps.map((gap) => ({ field: gap.field, message: gapSentence(gap) }));
    const paragraphs = [...new Set(gaps.map(({ paragraph }) => paragraph))].join(', ');
    throw new Problem('bad_input', `The report lacks something in paragraph ${paragraphs} of Schedule 1.`, {
      errors,
      members: { gaps },
    });
  }

  private async factsOf(manager: EntityManager, itemId: number) {
    const item = await readItem(manager, itemId);
    const store = await findStore(manager, item.storeId);
    if (!store) throw new Error(`There is no store ${item.storeId}.`);
    const today = this.clock.today(store.timeZone);
    const [gear] = await this.gearFacts.load(manager, { itemIds: [itemId] }, today);
    if (!gear) throw noSuchItem(itemId);
    const marks = [item.tag, item.serial].filter((mark) => mark !== null);
    return { gear, scheme: this.catalogue.scheme(store.scheme), today, marks };
  }
}

async function onRecord(
  manager: EntityManager,
  itemId: number,
  which: Parameters<typeof lastExamined>[2],
): Promise<Pick<ReportFacts, 'lastOnRecord'>> {
  const last = await lastExamined(manager, itemId, which);
  return last === undefined ? {} : { lastOnRecord: { on: last.doneOn, record: last.id } };
}
