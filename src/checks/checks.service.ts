import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { CommitmentsService, type AffectedJob } from '../custody/commitments.service.js';
import { badInput } from '../http/input.js';
import { insertInspection } from '../inspections/insert-inspection.js';
import { recordDefect } from '../inspections/record-defect.js';
import { loadJob } from '../jobs/load-job.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import { raiseNotice } from '../notices/notices.js';
import type { Actor } from '../people/actor.js';
import { lockItem, refuseScrapped, type LockedItem } from '../register/item-condition.js';
import type { CheckAnswer, CheckPoint } from '../rules/checks/checklist.js';
import { judgeCheck, type Finding } from '../rules/checks/judge-check.js';
import { findStore } from '../stores/find-store.js';
import { CLOCK_IN_DOUBT } from '../web/sentences/clock-in-doubt.js';
import { conflictOf } from './check-conflict.js';
import { checkFieldErrors } from './check-field-errors.js';
import type { CheckDefectView, CheckOutcomeView, NewCheckDto } from './checks.dto.js';
import { countedDay, type CountedDay } from './counted-day.js';
import { PreUseCheckEntity } from './pre-use-check.entity.js';

/** A check as it was judged. */
interface JudgedCheck {
  readonly outcome: 'fit' | 'unfit';
  readonly findings: readonly Finding[];
  /** The points that failed, with the words of the checklist. */
  readonly failed: readonly { readonly finding: Finding; readonly words: string }[];
}

/** Checks before use: the record of one, and what follows from it at once. */
@Injectable()
export class ChecksService {
  constructor(
    private readonly ledger: Ledger,
    private readonly catalogue: Catalogue,
    private readonly commitments: CommitmentsService,
    private readonly clock: Clock,
  ) {}

  /**
   * Records the check of one item. Each failed point leaves a defect; an immediate danger quarantines the item, flags
   * every booking of it and tells the store, all in the same change. A check passed never changes the condition.
   * Whatever its maker did not know is answered as a conflict, and the check is kept. One by a clock in doubt is kept
   * with all that follows from its faults, but counts as a check of no day.
   * @throws Problem `not_found`, `bad_input`, `not_allowed_now` of a scrapped item.
   */
  record(actor: Actor, itemId: number, input: NewCheckDto): Promise<CheckOutcomeView> {
    return this.ledger.change(actor, async (change) => {
      const item = await lockItem(change, itemId);
      refuseScrapped(item);
      const check = judge(this.catalogue.kind(item.kind).checklist, input.answers);
      const job = input.jobId === undefined ? undefined : await loadJob(change.manager, input.jobId);
      const conflict = await conflictOf(change, item, job);
      const itemZone = await zoneOf(change, item.storeId);
      const timeZone = job?.store.timeZone ?? itemZone;
      const when = countedDay(input.checkedAt, { receivedAt: change.at, timeZone });
      const inspectionId = await insertCheck(change, item, { input, check, when });
      const today = this.clock.today(itemZone);
      const defects = await recordDefects(change, item, { check, today });
      const affectedJobs = await this.tell(change, item, { check, today, jobId: job?.id ?? null });
      return {
        inspectionId,
        outcome: check.outcome,
        findings: check.findings.map((finding) => ({ ...finding })),
        defects,
        itemCondition: item.condition,
        countsFor: when.clockDoubtful ? null : when.day,
        clockDoubtful: when.clockDoubtful,
        ...(when.clockDoubtful && { advice: CLOCK_IN_DOUBT }),
        affectedJobs,
        ...(conflict && { conflict }),
      };
    });
  }

  /** Tells the store of what failed, and flags the bookings of what is a danger. */
  private async tell(
    change: Change,
    item: LockedItem,
    { check, today, jobId }: { check: JudgedCheck; today: CountedDay['day']; jobId: number | null },
  ): Promise<AffectedJob[]> {
    const [worst] = [...check.failed].sort(worstFirst);
    if (!worst) return [];
    const kind = worst.finding.severity;
    await raiseNotice(change, item, { kind, what: worst.words, jobId });
    if (kind !== 'immediateDanger') return [];
    return this.commitments.flag(change, item, { because: 'check.recorded', today });
  }
}

/** @throws Problem `bad_input` that names every point and figure in the way. */
function judge(points: readonly CheckPoint[], answers: readonly CheckAnswer[]): JudgedCheck {
  const judgement = judgeCheck(points, answers);
  if ('problems' in judgement) throw badInput(checkFieldErrors(judgement.problems, { points, answers }));
  const { outcome, findings } = judgement;
  const failed = findings
    .filter((finding) => finding.failed)
    .map((finding) => ({ finding, words: wordsOf(finding, points) }));
  return { outcome, findings, failed };
}

function wordsOf({ point, remarks }: Finding, points: readonly CheckPoint[]): string {
  const asked = points.find(({ key }) => key === point);
  const fails = asked === undefined ? point : `${asked.look} ${asked.failsWhen}`;
  return (remarks === undefined ? fails : `${fails} Seen: ${remarks}`).slice(0, 500);
}

function worstFirst(one: { finding: Finding }, other: { finding: Finding }): number {
  return Number(isDanger(other.finding)) - Number(isDanger(one.finding));
}

function isDanger({ severity }: Finding): boolean {
  return severity === 'immediateDanger';
}

/** The inspection and the answers behind it; gives the number of the inspection. */
async function insertCheck(
  change: Change,
  item: LockedItem,
  { input, check, when }: { input: NewCheckDto; check: JudgedCheck; when: CountedDay },
): Promise<number> {
  const doubt = when.clockDoubtful ? [CLOCK_IN_DOUBT] : [];
  const remarks = [...doubt, ...check.failed.map(({ words }) => words)].join('\n');
  const { id: inspectionId } = await insertInspection(change, item, {
    type: 'preUseCheck',
    doneOn: when.day,
    outcome: check.outcome,
    remarks: remarks.slice(0, 1000),
  });
  const { checkedAt, clockDoubtful } = when;
  const { jobId = null, answers, offsetMinutes } = input;
  const row = change.manager.create(PreUseCheckEntity, {
    inspectionId,
    itemId: item.id,
    jobId,
    checkedOn: when.day,
    checkedAt,
    answers,
    clockDoubtful,
    checkedBy: change.actor.id,
    receivedAt: change.at,
  });
  await change.manager.insert(PreUseCheckEntity, row);
  const said = { jobId, checkedOn: when.day, checkedAt, offsetMinutes, clockDoubtful, answers };
  const detail = { tag: item.tag, checkId: row.id, inspectionId, outcome: check.outcome, ...said };
  change.note({ action: 'check.recorded', subjectKind: 'item', subjectId: item.id, detail });
  return inspectionId;
}

async function recordDefects(
  change: Change,
  item: LockedItem,
  { check, today }: { check: JudgedCheck; today: CountedDay['day'] },
): Promise<CheckDefectView[]> {
  const defects: CheckDefectView[] = [];
  for (const { finding, words } of check.failed) {
    const { point, severity, workings } = finding;
    const found = { severity, description: words, kind: point, figures: workings, today };
    defects.push({ id: await recordDefect(change, item, found), point });
  }
  return defects;
}

async function zoneOf(change: Change, storeId: number): Promise<string> {
  const store = await findStore(change.manager, storeId);
  if (!store) throw new Error(`There is no store ${storeId}.`);
  return store.timeZone;
}
