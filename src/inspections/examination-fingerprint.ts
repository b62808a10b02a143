import { createHash } from 'node:crypto';
import { canonicalJson } from '../ledger/canonical-json.js';
import type { ReportParticulars } from '../rules/examination/report.js';

/** What of a report its fingerprint covers. */
interface SignedReport {
  readonly number: string;
  readonly itemId: number;
  readonly madeAt: string;
  readonly particulars: ReportParticulars;
}

/** SHA-256 over number, item, instant and particulars in canonical JSON: anyone can work it out again from the API. */
export function reportFingerprint({ number, itemId, madeAt, particulars }: SignedReport): string {
  return createHash('sha256').update(canonicalJson({ number, itemId, madeAt, particulars })).digest('hex');
}
