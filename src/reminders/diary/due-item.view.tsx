import type { DiaryEntry } from './diary-entry.js';
import { reasonsWords, stopWords, whereWords } from './diary-words.js';

/** An item that falls due: what it is, where, why, and what to do about each job that it would stop. */
export function DueItem({
  entry,
  kindName,
  mayExamine = false,
}: {
  entry: DiaryEntry;
  kindName: (kind: string) => string;
  mayExamine?: boolean;
}) {
  const { itemId, tag, kind, reasons, who } = entry;
  const examines = mayExamine && who === 'competentPerson';
  return (
    <li>
      <a class="tag" href={`/register/${itemId}`}>
        {tag}
      </a>{' '}
      {kindName(kind)}, {whereWords(entry)}: {reasonsWords(reasons)}
      {examines ? (
        <>
          {' '}
          <a href={`/register/${itemId}/examination`} aria-label={`Examine ${tag}`}>
            Examine it
          </a>
        </>
      ) : null}
      <Stops entry={entry} />
    </li>
  );
}

/** The jobs that an item would stop, each with what to do about it. Nothing when it stops none. */
export function Stops({ entry }: { entry: DiaryEntry }) {
  if (entry.stops.length === 0) return null;
  return (
    <ul class="stops">
      {entry.stops.map((job) => (
        <li key={job.jobId}>
          Stops <a href={`/jobs/${job.jobId}`}>job {job.reference}</a>, {stopWords(entry, job)}
        </li>
      ))}
    </ul>
  );
}
