import type { Actor } from '../../people/actor.js';
import type { MethodDefinition } from '../../rules/lines/method.js';
import { instant } from '../../web/sentences/words.js';
import { page } from '../../web/page.js';
import { calculationSentence } from '../calculation-words.js';
import { JobCrumbs, JobLinks } from '../job-links.view.js';
import { keepsJobs } from '../job-words.js';
import type { Job } from '../load-job.js';
import type { CalculationSheet } from './calculation-sheet.js';
import type { Calculations, JobCalculation } from './calculations.service.js';
import type { KeptSheet } from './kept-sheets.js';
import { programmeWarnings } from './programme-words.js';
import { ProgrammeTables } from './programme.view.js';
import { SheetParts } from './sheet-parts.view.js';

interface Shown {
  readonly me: Actor;
  readonly sources: (key: string) => string;
}

/** The calculation of a job as it stands: every step from the panel schedule to the gear lines, to be checked with a pocket calculator. */
export function calculationPage({
  me,
  sources,
  calculation: { job, method, sheet, programme, kept },
}: Shown & { calculation: JobCalculation }): string {
  return page(
    { title: `Calculation of job ${job.reference}`, actor: me, path: `/jobs/${job.id}/calculation` },
    <>
      <JobCrumbs job={job} />
      <h1>
        Calculation of job <span class="tag">{job.reference}</span>: {job.name}
      </h1>
      <JobLinks job={job} me={me} here="calculation" />
      <Unsettled sheet={sheet} job={job} mayState={keepsJobs(me) && !job.cancelled} />
      {programme
        ? programmeWarnings(programme).map((warning) => (
            <p class="note note-refused" key={warning}>
              {warning}
            </p>
          ))
        : null}
      <Cautions method={method} />
      <SheetParts
        sheet={sheet}
        sources={sources}
        programme={programme && <ProgrammeTables programme={programme} />}
      />
      <KeptList jobId={job.id} kept={kept} />
    </>,
  );
}

/** A calculation as it stood when gear was reserved. */
export function keptCalculationPage({
  me,
  sources,
  kept: { job, keptAt, fingerprint, sheet },
}: Shown & { kept: Awaited<ReturnType<Calculations['kept']>> }): string {
  return page(
    { title: `Kept calculation of job ${job.reference}`, actor: me, path: `/jobs/${job.id}/calculation` },
    <>
      <JobCrumbs job={job} />
      <h1>
        Calculation of job <span class="tag">{job.reference}</span>, as kept
      </h1>
      <p class="lede">
        Kept with the booking on {instant(keptAt)}. It never changes. The job may have moved on:{' '}
        <a href={`/jobs/${job.id}/calculation`}>see the calculation as it stands</a>.
      </p>
      <p class="source">Fingerprint (SHA-256): {fingerprint}</p>
      <SheetParts sheet={sheet} sources={sources} />
    </>,
  );
}

/** Everything that is in the way, first and together. */
function Unsettled({ sheet, job, mayState }: { sheet: CalculationSheet; job: Job; mayState: boolean }) {
  const figures = sheet.sections.flatMap((section) => section.figures);
  const labelOf = (key: string) => figures.find((known) => known.key === key)?.label;
  const sentences = sheet.sections
    .filter(({ workings }) => workings.length === 0)
    .flatMap(({ problems }) => problems.map((problem) => calculationSentence(problem, labelOf)));
  if (sentences.length === 0) return null;
  return (
    <div class="note note-refused" role="status">
      <p class="note-title">Not settled yet: gear that depends on it is refused</p>
      <ul>
        {[...new Set(sentences)].map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {mayState ? (
        <p>
          <a href={`/jobs/${job.id}/edit#figures`}>State the figures of this job</a>
        </p>
      ) : null}
    </div>
  );
}

function Cautions({ method }: { method: MethodDefinition }) {
  return (
    <div class="note note-due">
      <p class="note-title">{method.name}</p>
      <ul>
        {method.cautions.map(({ text }) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  );
}

function KeptList({ jobId, kept }: { jobId: number; kept: readonly KeptSheet[] }) {
  return (
    <section class="sheet">
      <h2>Kept with the booking</h2>
      {kept.length === 0 ? (
        <p>Nothing is reserved yet. The calculation is kept whenever gear is reserved on it.</p>
      ) : (
        <ul>
          {kept.map(({ id, keptAt }) => (
            <li key={id}>
              <a href={`/jobs/${jobId}/calculation/${id}`}>As it stood on {instant(keptAt)}</a>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
