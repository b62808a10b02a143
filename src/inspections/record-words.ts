import type { Severity } from './severity.js';

export const SEVERITY_NAMES: Readonly<Record<Severity, string>> = {
  immediateDanger: 'immediate danger',
  dangerByDate: 'danger',
  observation: 'observation',
};

const ACTION_WORDS: Readonly<Record<string, string>> = {
  'item.created': 'entered in the register',
  'item.edited': 'record changed',
  'item.quarantined': 'quarantined',
  'item.repairStarted': 'sent to repair',
  'item.released': 'released into service',
  'item.scrapped': 'scrapped',
  'inspection.recorded': 'inspection recorded',
  'examination.signed': 'report of examination signed',
  'defect.reported': 'defect reported',
  'defect.closed': 'defect closed',
  'event.recorded': 'event recorded',
  'lifts.counted': 'lifts counted',
  'job.shockRecorded': 'shock recorded',
  'register.batchQuarantined': 'batch quarantined',
  'item.reportMissing': 'report off file: its last examination has none',
  'item.certificateFiled': 'certificate on file from now on',
  'document.added': 'photo or certificate added',
  'check.recorded': 'checked before use',
  'notice.raised': 'store told of it',
  'notice.settled': 'notice settled',
};

/** What a line of the ledger says was done, in words; the ledger's own name where there are none. */
export function actionWords(action: string): string {
  return ACTION_WORDS[action] ?? action;
}
