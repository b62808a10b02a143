import { faultWords, noticeWords } from './finding-words.js';
import type { ImportReportView } from './import.dto.js';
import type { DryRun } from './import.service.js';
import { mappingView } from './mapping-input.js';

/** A dry run as the API gives it, with a sentence for everything found. */
export function reportView({ upload, examination }: DryRun): ImportReportView {
  const { headings, mapping, missing, conventions, rows, skipped, total } = examination;
  return {
    uploadId: upload.id,
    fileName: upload.fileName,
    headings: [...headings],
    mapping: mappingView(mapping),
    ...conventions,
    missing: [...missing],
    counts: {
      rows: total,
      sound: rows.sound.length,
      unchanged: rows.unchanged.length,
      faulty: rows.faulty.length,
      skipped,
    },
    faults: rows.faulty.flatMap(({ faults }) =>
      faults.map((fault) => {
        const { row, column, cell, code } = fault;
        const { wrong, remedy } = faultWords(fault);
        return {
          row,
          code,
          sentence: wrong,
          remedy,
          ...(column === undefined ? {} : { column }),
          ...(cell === undefined ? {} : { cell }),
        };
      }),
    ),
    notices: rows.notices.map((notice) => {
      const { subject: _, rows: __, ...where } = notice;
      return { ...where, sentence: noticeWords(notice) };
    }),
  };
}
