import { Like } from 'typeorm';
import type { Change } from '../ledger/ledger.service.js';
import type { Day } from '../rules/calendar/day.js';
import { ExaminationReportEntity } from './examination-report.entity.js';

/**
 * The number of the next report of the year, such as `TE-2026-0001`: one more than there are, and reports are never
 * deleted, so there is no gap and none twice. The head of the ledger is locked first and stays so until the change is
 * done: on PostgreSQL a second signer waits here and then counts the first one's report; on SQLite writes run one at
 * a time anyhow. A change that fails takes its number back.
 */
export async function nextReportNumber(change: Change, reportedOn: Day): Promise<string> {
  const prefix = `TE-${reportedOn.slice(0, 4)}-`;
  await change.lock('ledger_head', [1]);
  const soFar = await change.manager.countBy(ExaminationReportEntity, { number: Like(`${prefix}%`) });
  return `${prefix}${String(soFar + 1).padStart(4, '0')}`;
}
