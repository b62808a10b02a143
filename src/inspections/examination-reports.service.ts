import { Injectable } from '@nestjs/common';
import { In } from 'typeorm';
import { Ledger } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import type { ReportParticulars } from '../rules/examination/report.js';
import { Reads } from '../storage/reads.js';
import { reportFingerprint } from './examination-fingerprint.js';
import { ExaminationReportEntity } from './examination-report.entity.js';
import type { ExaminationView, ReportLinkView } from './examinations.dto.js';
import { InspectionEntity } from './inspection.entity.js';

/** More lines of history than any item gathers in its life. */
const MOST_LINES = 5_000;

/** Gives reports of thorough examination as they were signed. */
@Injectable()
export class ExaminationReports {
  constructor(
    private readonly reads: Reads,
    private readonly ledger: Ledger,
  ) {}

  /** @throws Problem `not_found`. */
  async get(id: number): Promise<ExaminationView> {
    const row = await this.reads.manager.findOneBy(ExaminationReportEntity, { id });
    if (!row) throw new Problem('not_found', `There is no report of examination with the number ${id}.`);
    const { number, particulars, madeAt, inspectionId } = row;
    const inspection = await this.reads.manager.findOneByOrFail(InspectionEntity, { id: inspectionId });
    const { itemId, outcome, supersedesId } = inspection;
    const later = await this.reads.manager.findOneBy(InspectionEntity, { supersedesId: inspectionId });
    const fingerprint = reportFingerprint({ number, itemId, madeAt, particulars });
    return {
      id,
      number,
      itemId,
      inspectionId,
      outcome,
      particulars,
      madeAt,
      fingerprint,
      unaltered: await this.ledgerHolds(itemId, fingerprint),
      supersedesInspectionId: supersedesId,
      supersedes: supersedesId === null ? null : await this.linkOf(supersedesId),
      supersededBy: later === null ? null : await this.linkOf(later.id),
    };
  }

  /** The reports among records of inspections, by the number of the record. */
  async linksOf(inspectionIds: readonly number[]): Promise<ReadonlyMap<number, ReportLinkView>> {
    const rows = await this.reads.manager.find(ExaminationReportEntity, {
      select: ['id', 'number', 'inspectionId'],
      where: { inspectionId: In([...inspectionIds]) },
    });
    return new Map(rows.map(({ id, number, inspectionId }) => [inspectionId, { id, number }]));
  }

  /** The particulars of the report of a record; undefined of a record that has none. */
  async particularsOf(inspectionId: number): Promise<ReportParticulars | undefined> {
    const row = await this.reads.manager.findOneBy(ExaminationReportEntity, { inspectionId });
    return row?.particulars;
  }

  /** What someone wrote last: a form starts with their address, qualifications and employer. */
  async lastSignedBy(actor: Actor): Promise<ReportParticulars | undefined> {
    const row = await this.reads.manager
      .createQueryBuilder(ExaminationReportEntity, 'report')
      .innerJoin(InspectionEntity, 'inspection', 'inspection.id = report.inspection_id')
      .where('inspection.recorded_by = :id', { id: actor.id })
      .orderBy('report.id', 'DESC')
      .limit(1)
      .getOne();
    return row?.particulars;
  }

  private async linkOf(inspectionId: number): Promise<ReportLinkView | null> {
    return (await this.linksOf([inspectionId])).get(inspectionId) ?? null;
  }

  private async ledgerHolds(itemId: number, fingerprint: string): Promise<boolean> {
    const lines = await this.ledger.newest(MOST_LINES, { kind: 'item', id: itemId });
    return lines.some(
      ({ action, detail }) => action === 'examination.signed' && holds(detail, { fingerprint }),
    );
  }
}

function holds(detail: unknown, { fingerprint }: { fingerprint: string }): boolean {
  return typeof detail === 'object' && detail !== null && Reflect.get(detail, 'fingerprint') === fingerprint;
}
