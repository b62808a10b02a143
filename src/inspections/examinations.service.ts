import { Injectable } from '@nestjs/common';
import { IsNull } from 'typeorm';
import { Clock } from '../clock.js';
import { CommitmentsService, type AffectedJob } from '../custody/commitments.service.js';
import { badInput } from '../http/input.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import { raiseNotice } from '../notices/notices.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { lockItem, refuseScrapped, type LockedItem } from '../register/item-condition.js';
import { RegisterService } from '../register/register.service.js';
import type { Day } from '../rules/calendar/day.js';
import type { ReportedDefect, ReportParticulars } from '../rules/examination/report.js';
import { checkRelease, refuseOtherRoles } from './check-inspection.js';
import { refuseCorrectionByOthers, refuseEarlierRelease, refuseWrongCorrection } from './correction.js';
import { DefectEntity } from './defect.entity.js';
import { ExaminationDrafts } from './examination-drafts.service.js';
import { reportFingerprint } from './examination-fingerprint.js';
import { nextReportNumber } from './examination-number.js';
import { ExaminationReportEntity } from './examination-report.entity.js';
import { ExaminationReports } from './examination-reports.service.js';
import type { ExaminationOutcomeView, NewExaminationDto } from './examinations.dto.js';
import { followInspection } from './follow-inspection.js';
import type { InspectionEntity } from './inspection.entity.js';
import { recordDefect } from './record-defect.js';
import { release } from './release.js';
import { insertWithReport, lacksReport } from './report-on-file.js';

const TYPE = 'thoroughExamination';

/** Reports of thorough examination: signed by the examiner's own account, numbered, and never changed. */
@Injectable()
export class ExaminationsService {
  constructor(
    private readonly ledger: Ledger,
    private readonly register: RegisterService,
    private readonly commitments: CommitmentsService,
    private readonly drafts: ExaminationDrafts,
    private readonly reports: ExaminationReports,
    private readonly clock: Clock,
  ) {}

  /**
   * Signs a report: the examination, its report with the next number, the defects found, and quarantine or release,
   * all in one change.
   * @throws Problem `not_found`, `bad_input` that names each paragraph with a gap, `not_your_role`, `not_allowed_now`.
   */
  async sign(actor: Actor, itemId: number, input: NewExaminationDto): Promise<ExaminationOutcomeView> {
    const { reportId, affectedJobs } = await this.ledger.change(actor, async (change) => {
      refuseUnsigned(actor, input);
      const item = await lockItem(change, itemId);
      refuseScrapped(item);
      const { report, today, scheme } = await this.drafts.prepare(change.manager, { actor, itemId, input });
      await refuseWrongUse(change, item, { input, report });
      const hadReport = item.certificateOnFile;
      const { row, inspection } = await insertReport(change, item, { input, report });
      if (input.release) await release(change, item, { examination: inspection, clock: this.clock });
      await recordFound(change, item, { defects: report.defects, today });
      const lostReport = hadReport && lacksReport(item, scheme, today);
      const affectedJobs = await this.follow(change, item, { report, today, lostReport });
      return { reportId: row.id, affectedJobs };
    });
    const examination = await this.reports.get(reportId);
    return { examination, item: await this.register.get(itemId), affectedJobs };
  }

  private follow(
    change: Change,
    item: LockedItem,
    { report, today, lostReport }: { report: ReportParticulars; today: Day; lostReport: boolean },
  ): Promise<AffectedJob[]> {
    const { examinedOn: doneOn, nextExaminationBy: nextDueOn, defects } = report;
    const input = { doneOn, outcome: outcomeOf(report), nextDueOn, ...remarksOf(defects) };
    return followInspection(change, item, { input, today, lostReport, commitments: this.commitments });
  }
}

/** The signature is the sign-in, so nobody signs for someone else, and the command line signs nothing. */
function refuseUnsigned(actor: Actor, { declared }: NewExaminationDto): void {
  refuseOtherRoles(actor, TYPE);
  if (actor.id === null) throw new Problem('not_your_role', "Signing needs the examiner's own account.");
  if (declared !== true) {
    const message = 'say that you examined it yourself: without that nothing is signed';
    throw badInput([{ field: 'declared', message }]);
  }
}

async function refuseWrongUse(
  change: Change,
  item: LockedItem,
  { input, report }: { input: NewExaminationDto; report: ReportParticulars },
): Promise<void> {
  const correction = input.supersedesId === undefined ? {} : { supersedesId: input.supersedesId };
  const { examinedOn: doneOn } = report;
  const record = { type: TYPE, doneOn, outcome: outcomeOf(report), ...correction } as const;
  const errors = input.release ? checkRelease(record) : [];
  if (errors.length > 0) throw badInput(errors);
  await refuseWrongCorrection(change, item, record);
  await refuseEarlierRelease(change, item, record);
  await refuseCorrectionByOthers(change, record);
}

async function insertReport(
  change: Change,
  item: LockedItem,
  { input, report: particulars }: { input: NewExaminationDto; report: ReportParticulars },
): Promise<{ row: ExaminationReportEntity; inspection: InspectionEntity }> {
  const number = await nextReportNumber(change, particulars.reportedOn);
  const inspection = await insertWithReport(change, item, {
    type: TYPE,
    doneOn: particulars.examinedOn,
    outcome: outcomeOf(particulars),
    nextDueOn: particulars.nextExaminationBy,
    reportNumber: number,
    ...remarksOf(particulars.defects),
    ...(input.supersedesId === undefined ? {} : { supersedesId: input.supersedesId }),
  });
  const report = { inspectionId: inspection.id, number, particulars, madeAt: change.at };
  const row = change.manager.create(ExaminationReportEntity, report);
  await change.manager.insert(ExaminationReportEntity, row);
  const fingerprint = reportFingerprint({ ...report, itemId: item.id });
  change.note({
    action: 'examination.signed',
    subjectKind: 'item',
    subjectId: item.id,
    detail: { tag: item.tag, reportId: row.id, inspectionId: inspection.id, number, fingerprint },
  });
  return { row, inspection };
}

/** Records what was found; a defect that is open already in the same words and with the same day is not entered twice. */
async function recordFound(
  change: Change,
  item: LockedItem,
  { defects, today }: { defects: readonly ReportedDefect[]; today: Day },
): Promise<void> {
  const open = await change.manager.findBy(DefectEntity, {
    itemId: item.id,
    closedByInspectionId: IsNull(),
  });
  for (const defect of defects) {
    const severity = defect.danger === 'is' ? 'immediateDanger' : 'dangerByDate';
    const found = { severity, description: defectText(defect), lastDayOfUse: defect.by ?? null } as const;
    const isKnown = open.some(
      (known) =>
        known.severity === severity &&
        known.description === found.description &&
        known.lastDayOfUse === found.lastDayOfUse,
    );
    if (isKnown) continue;
    await recordDefect(change, item, { ...found, today });
    await raiseNotice(change, item, {
      kind: severity,
      what: found.description,
      lastDayOfUse: found.lastDayOfUse,
    });
  }
}

function outcomeOf({ safeToOperate }: ReportParticulars): 'fit' | 'unfit' {
  return safeToOperate ? 'fit' : 'unfit';
}

function remarksOf(defects: readonly ReportedDefect[]): { remarks?: string } {
  return defects.length === 0 ? {} : { remarks: defects.map(defectText).join('; ').slice(0, 1000) };
}

function defectText({ part, description }: ReportedDefect): string {
  return `${part}: ${description}`;
}
