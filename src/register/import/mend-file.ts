import { csvText } from '../export/csv-text.js';
import { WRONG_HEADING, type Examination } from './examine-file.js';
import { faultWords } from './finding-words.js';
import type { Table } from './table.js';

/**
 * The faulty rows as a file to mend: the headings and delimiter of the original, each cell as it was, and what is
 * wrong. In the original's encoding where every letter exists in it, else in UTF-8. No cell is taken for a formula.
 */
export function mendFile(table: Table, { headings, rows }: Examination): Buffer {
  const lines = rows.faulty.map(({ row, faults }) => [
    ...headings.map((_, column) => row.cells[column]?.text ?? ''),
    faults
      .map((fault) => {
        const { wrong, remedy } = faultWords(fault);
        return `${fault.column ? `${fault.column}: ` : ''}${wrong} ${remedy}`;
      })
      .join(' '),
  ]);
  const text = csvText([[...headings, WRONG_HEADING], ...lines], table.delimiter);
  const plain = text.replace(/^\uFEFF/, '');
  return table.encoding === 'windows-1252' && isLatin1(plain)
    ? Buffer.from(plain, 'latin1')
    : Buffer.from(text, 'utf8');
}

/** Latin-1 and Windows-1252 mean the same letters but for the range of the control signs. */
function isLatin1(text: string): boolean {
  return /^[\0-\x7f\xa0-\xff]*$/.test(text);
}
