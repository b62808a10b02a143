import { dueSentence, nearDay } from '../../web/sentences/due-reason.js';
import type { DiaryEntry, DiaryJob } from '../diary/diary-entry.js';
import type { MailEntry } from '../mails/mail-content.js';
import type { DigestFacts } from './digest-facts.js';

/** One item of a digest: what is due, which jobs it stops and where to look for another; with `sayStore` also where it is kept. */
export function digestEntry(
  entry: DiaryEntry,
  { kindName, address, sayStore = false }: Pick<DigestFacts, 'kindName' | 'address'> & { sayStore?: boolean },
): MailEntry {
  const { itemId, tag, kind, storeName, today, reasons, jobs, stops } = entry;
  const out = jobs.find((job) => job.out);
  return {
    title: {
      text: `${tag}, ${kindName(kind).toLowerCase()}${sayStore ? `, ${storeName}` : ''}`,
      href: `${address}/register/${itemId}`,
    },
    sentences: [
      [...new Set(reasons.map((reason) => dueSentence(reason, today)))].join(' '),
      ...(out ? [outSentence(out, entry)] : []),
      ...stopSentence(entry),
    ],
    links: stops.map(({ jobId, reference }) => ({
      text: `See what could take its place on job ${reference}`,
      href: `${address}/jobs/${jobId}`,
    })),
  };
}

function outSentence({ reference, to }: DiaryJob, { today, dueOn, overdue }: DiaryEntry): string {
  if (to < today) return `Out on job ${reference}, and was to be back on ${nearDay(to, today)}.`;
  const past = !overdue && to > dueOn ? ', past its due day' : '';
  return `Out on job ${reference} until ${nearDay(to, today)}${past}.`;
}

function stopSentence({ stops, today, overdue }: DiaryEntry): string[] {
  return stops
    .filter(({ out }) => !out)
    .map(
      ({ reference, from, to }) =>
        `${overdue ? 'Stops' : 'Would stop'} job ${reference}, ${nearDay(from, today)} to ${nearDay(to, today)}.`,
    );
}
