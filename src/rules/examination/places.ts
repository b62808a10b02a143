import type { Verification } from '../citation.js';
import type { SourceKey } from '../working.js';
import type { Paragraph } from './report.js';

/** One thing that the rules of a place ask a record to hold, and the paragraphs of our report that carry it. */
export interface RecordDuty {
  readonly asks: 'wholeReport' | 'lastThoroughInspection' | 'proofTest' | 'registerEntry';
  readonly paragraphs: readonly Paragraph[];
  readonly source: SourceKey;
  readonly clause: string;
  readonly verified: Verification;
}

/**
 * What the law of each place is known to ask of the record of an examination. Great Britain has a list; for the other
 * places only single duties were found, and each of them is a part of that list. So the report answers the whole list
 * everywhere: it is the fullest. A place without an entry has nothing on record here, which is not to say that
 * nothing is asked.
 */
export const RECORD_DUTIES: Readonly<Record<string, readonly RecordDuty[]>> = {
  gb: [
    {
      asks: 'wholeReport',
      paragraphs: ['1', '2', '3', '4', '5', '6(a)', '6(b)', '7(a)', '7(b)', '8(a)', '8(b)', '8(c)'],
      source: 'loler-1998',
      clause: 'Schedule 1 paragraphs 1 to 8(c)',
      verified: 'read',
    },
    {
      asks: 'wholeReport',
      paragraphs: ['8(d)', '8(e)', '8(f)', '9', '10'],
      source: 'loler-1998',
      clause: 'Schedule 1 paragraphs 8(d) to 10',
      verified: 'readInReproduction',
    },
    {
      asks: 'wholeReport',
      paragraphs: ['11'],
      source: 'loler-1998',
      clause: 'Schedule 1 paragraph 11',
      verified: 'memory',
    },
  ],
  us: [
    {
      asks: 'lastThoroughInspection',
      paragraphs: ['3', '8(f)'],
      source: 'cfr-1926-251',
      clause: '(b)(6)(ii), alloy steel chain',
      verified: 'readInReproduction',
    },
    {
      asks: 'proofTest',
      paragraphs: ['8(e)'],
      source: 'cfr-1926-251',
      clause: '(a)(4), custom accessories',
      verified: 'read',
    },
  ],
  eu: [
    {
      asks: 'registerEntry',
      paragraphs: ['3', '4', '8(e)', '8(f)'],
      source: 'ie-si-299-2007',
      clause: 'reg 54, Ireland',
      verified: 'read',
    },
  ],
  au: [],
};
