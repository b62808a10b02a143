import { Injectable } from '@nestjs/common';
import { IsNull } from 'typeorm';
import { Ledger } from '../ledger/ledger.service.js';
import { requireItem } from '../register/item-condition.js';
import { RegisterService } from '../register/register.service.js';
import { Reads } from '../storage/reads.js';
import { DefectEntity } from './defect.entity.js';
import { ExaminationReports } from './examination-reports.service.js';
import { GearEventEntity } from './gear-event.entity.js';
import { InspectionEntity } from './inspection.entity.js';
import type { DefectView, DueView, EventView, HistoryLineView, InspectionView } from './inspections.dto.js';

/** More records than any item gathers in its life; the oldest beyond are left to the ledger. */
const MOST_RECORDS = 500;

/** Gives what was recorded of one item, newest first. */
@Injectable()
export class ItemRecords {
  constructor(
    private readonly reads: Reads,
    private readonly ledger: Ledger,
    private readonly register: RegisterService,
    private readonly reports: ExaminationReports,
  ) {}

  /** When each inspection falls due, with workings. @throws Problem `not_found`. */
  async due(itemId: number): Promise<DueView> {
    const { today, currency, report } = await this.register.standing(itemId);
    const { dueOn, inspections, defectDeadline, cautions } = report;
    return {
      today,
      currency,
      ...(dueOn === undefined ? {} : { dueOn }),
      inspections: inspections.map(({ type, lastDoneOn, dueOn: due, neverExamined, workings }) => ({
        type,
        ...(lastDoneOn === undefined ? {} : { lastDoneOn }),
        ...(due === undefined ? {} : { dueOn: due }),
        neverExamined,
        workings,
      })),
      ...(defectDeadline === undefined ? {} : { defectDeadline }),
      cautions: [...cautions],
    };
  }

  /** Whether a defect of the item is open. */
  hasOpenDefects(itemId: number): Promise<boolean> {
    return this.reads.manager.existsBy(DefectEntity, { itemId, closedByInspectionId: IsNull() });
  }

  /** Every inspection, corrected ones marked. */
  async inspections(itemId: number): Promise<InspectionView[]> {
    await requireItem(this.reads.manager, itemId);
    const rows = await this.reads.manager.find(InspectionEntity, {
      where: { itemId },
      order: { doneOn: 'DESC', id: 'DESC' },
      take: MOST_RECORDS,
    });
    const corrected = new Set(rows.map(({ supersedesId }) => supersedesId));
    const reports = await this.reports.linksOf(rows.map(({ id }) => id));
    return rows.map(({ itemId: _, item: __, recordedBy: ___, ...row }) => ({
      ...row,
      superseded: corrected.has(row.id),
      examinationId: reports.get(row.id)?.id ?? null,
    }));
  }

  /** Every defect, open ones first. */
  async defects(itemId: number): Promise<DefectView[]> {
    await requireItem(this.reads.manager, itemId);
    const rows = await this.reads.manager.find(DefectEntity, {
      where: { itemId },
      order: { id: 'DESC' },
      take: MOST_RECORDS,
    });
    const views = rows.map(
      ({ id, severity, description, lastDayOfUse, recordedAt, closedByInspectionId }) => {
        return { id, severity, description, lastDayOfUse, recordedAt, closedByInspectionId };
      },
    );
    return [...views.filter(isOpen), ...views.filter((view) => !isOpen(view))];
  }

  /** Everything that happened to it. */
  async events(itemId: number): Promise<EventView[]> {
    await requireItem(this.reads.manager, itemId);
    const rows = await this.reads.manager.find(GearEventEntity, {
      where: { itemId },
      order: { happenedOn: 'DESC', id: 'DESC' },
      take: MOST_RECORDS,
    });
    return rows.map(({ id, type, happenedOn, remarks, recordedAt }) => ({
      id,
      type,
      happenedOn,
      remarks,
      recordedAt,
    }));
  }

  /** Its lines of the ledger. */
  async history(itemId: number, limit = 200): Promise<HistoryLineView[]> {
    await requireItem(this.reads.manager, itemId);
    const entries = await this.ledger.newest(limit, { kind: 'item', id: itemId });
    return entries.map(({ number, at, actorName, action, detail }) => ({
      number,
      at,
      actorName,
      action,
      detail,
    }));
  }
}

function isOpen({ closedByInspectionId }: DefectView): boolean {
  return closedByInspectionId === null;
}
