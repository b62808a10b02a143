import { Scroll } from '../web/components/scroll.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { BookingFlagsNote } from '../custody/booking-flags.view.js';
import { CoverageSection } from '../checks/coverage-section.view.js';
import { BookedTable } from '../custody/booked-table.view.js';
import { JobLifts } from '../custody/site-use.view.js';
import { Form } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { StateMark } from '../web/components/state-mark.js';
import { Workings } from '../web/components/workings.js';
import { page } from '../web/page.js';
import { needsSentence } from '../web/sentences/needs.js';
import { DUTY_NAMES, day, figure, needFigure } from '../web/sentences/words.js';
import { JobCrumbs, JobLinks } from './job-links.view.js';
import type { JobSheet } from './job-sheet.service.js';
import { jobMark, keepsJobs } from './job-words.js';

/** What the sheet of a job needs. `sources` gives the title of a source by its key. */
export interface JobSheetProps {
  readonly me: Actor;
  readonly sheet: JobSheet;
  readonly sources: (key: string) => string;
  readonly problem?: Problem;
}

/** The sheet of a job: when and where, the panels, the gear they need, and how the booking stands. */
export function jobSheetPage({ me, sheet, sources, problem }: JobSheetProps): string {
  const { job, booking } = sheet;
  return page(
    { title: `Job ${job.reference}`, actor: me, path: `/jobs/${job.id}` },
    <>
      <JobCrumbs />
      <h1>
        Job <span class="tag">{job.reference}</span>: {job.name}
      </h1>
      <ProblemNote problem={problem} />
      {warningsOf(sheet).map((warning) => (
        <p class="note note-due" key={warning}>
          {warning}
        </p>
      ))}
      <p class="lede">
        <StateMark {...jobMark({ ...sheet, needed: booking.needed })} />
      </p>
      <JobLinks job={job} me={me} here="sheet" />
      <BookingFlagsNote job={job} booking={booking} />
      <CoverageSection coverage={sheet.coverage} />
      <div class="two-columns">
        <PanelSchedule sheet={sheet} />
        <Header sheet={sheet} />
      </div>
      <GearLines sheet={sheet} sources={sources} />
      <section class="sheet">
        <h2>Booking</h2>
        <BookedTable
          jobId={job.id}
          booking={booking}
          labels={labelsOf(sheet)}
          mayRelease={keepsJobs(me) && !job.cancelled}
        />
        {keepsJobs(me) && booking.items.length > 0 ? (
          <p>
            <a href={`/labels?jobId=${job.id}`}>Print labels for them</a>
          </p>
        ) : null}
      </section>
      {sheet.use.isOut || sheet.use.lifts.days.length > 0 ? (
        <>
          <JobLifts me={me} sheet={sheet.use} />
          <p class="actions">
            <a class="button quiet" href={`/jobs/${job.id}/use#happened`}>
              Something happened
            </a>
            {sheet.use.isOut ? (
              <a class="button quiet" href={`/phone#/jobs/${job.id}`}>
                Check on the phone
              </a>
            ) : null}
          </p>
        </>
      ) : null}
      {keepsJobs(me) && !job.cancelled ? <CancelJob job={job} /> : null}
    </>,
  );
}

/** That the load-out day is over, or that the days are too few, matters only while the gear has not gone. */
function warningsOf({ job, state, programmeWarnings }: JobSheet): readonly string[] {
  return state === 'planned' || state === 'reserved' ? [...job.warnings, ...programmeWarnings] : [];
}

function labelsOf({ lines }: JobSheet): ReadonlyMap<string, string> {
  return new Map(lines.map(({ key, label }) => [key, label]));
}

function Header({ sheet: { job, methodName, schemeName } }: { sheet: JobSheet }) {
  const { counts } = job;
  const pairs: readonly (readonly [string, string])[] = [
    ['Site', job.site],
    ['Load-out day', day(job.loadOutDay)],
    ['Back day', day(job.backDay)],
    ['Store', job.storeName],
    ['Other stores', job.otherStores ? 'may lend' : 'left alone'],
    ['Inspection rules', schemeName],
    ['Method', methodName],
    ['Crews', String(counts.crews)],
    ['Lifters in use', String(counts.liftersInUse)],
    ['Panels on wheels', String(counts.panelsOnWheels)],
    ['Trucks unloading', String(counts.trucksUnloading)],
    ['Persons aloft', String(counts.personsAloft)],
  ];
  return (
    <section class="sheet">
      <h2>At a glance</h2>
      <dl class="pairs">
        {pairs.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function PanelSchedule({ sheet: { panels, ruling } }: { sheet: JobSheet }) {
  return (
    <section class="sheet">
      <h2>Panel schedule</h2>
      <p>
        The heaviest is <strong>{ruling.heaviest.panel.name}</strong> at{' '}
        {needFigure(ruling.heaviest.massKg.toString(), 'kg')}; packed,{' '}
        <strong>{ruling.heaviestPacked.panel.name}</strong> at{' '}
        {needFigure(ruling.heaviestPacked.packedKg.toString(), 'kg')}.
      </p>
      <Scroll label="Panel schedule">
        <table>
          <caption>Sizes in mm, masses of one panel</caption>
          <thead>
            <tr>
              <th scope="col">Panel</th>
              <th scope="col" class="num">
                Height
              </th>
              <th scope="col" class="num">
                Width
              </th>
              <th scope="col" class="num">
                Thick
              </th>
              <th scope="col" class="num">
                Mass
              </th>
              <th scope="col" class="num">
                Packed
              </th>
              <th scope="col" class="num">
                Count
              </th>
            </tr>
          </thead>
          <tbody>
            {panels.map(({ panel, massKg, packedKg }, index) => (
              <tr key={index}>
                <th scope="row">{panel.name}</th>
                <td class="num">{figure(panel.heightMm)}</td>
                <td class="num">{figure(panel.widthMm)}</td>
                <td class="num">{figure(panel.thicknessMm)}</td>
                <td class="num">
                  {needFigure(massKg, 'kg')}{' '}
                  {panel.massKg === undefined ? <span class="faded">est.</span> : null}
                </td>
                <td class="num">{needFigure(packedKg, 'kg')}</td>
                <td class="num">{panel.count}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

function GearLines({ sheet: { job, lines, ruling }, sources }: Pick<JobSheetProps, 'sheet' | 'sources'>) {
  const needed = lines.filter(({ quantity }) => quantity > 0);
  const dropped = lines.filter(({ quantity }) => quantity === 0);
  return (
    <section class="sheet">
      <h2>Gear needed</h2>
      {needed.some(({ unsettled }) => unsettled) ? (
        <p class="note note-refused">
          Figures are missing, or cannot be. What depends on them takes no gear:{' '}
          <a href={`/jobs/${job.id}/calculation`}>see the calculation</a>.
        </p>
      ) : null}
      <details>
        <summary>How the masses were worked out</summary>
        <Workings workings={ruling.workings} sources={sources} />
      </details>
      <ul class="cards">
        {needed.map((line) => (
          <li class="card" key={line.key}>
            <h3>
              {line.quantity} × {line.label}
            </h3>
            <p>
              For {DUTY_NAMES[line.duty]}, each {needsSentence(line)}.
            </p>
            {line.adjusted ? (
              <p>
                Changed from {line.adjusted.methodQuantity}: {line.adjusted.reason}
              </p>
            ) : null}
            <details>
              <summary>Working</summary>
              <Workings workings={line.workings} sources={sources} />
            </details>
          </li>
        ))}
      </ul>
      {dropped.length > 0 ? (
        <>
          <h3>Not needed</h3>
          <ul>
            {dropped.map(({ key, label, adjusted }) => (
              <li key={key}>
                {label}
                {adjusted ? `: ${adjusted.methodQuantity} by the method. ${adjusted.reason}` : ''}
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}

function CancelJob({ job }: { job: JobSheet['job'] }) {
  return (
    <details>
      <summary>Cancel this job</summary>
      <Form action={`/jobs/${job.id}/cancel`} label="Cancel the job">
        <input type="hidden" name="version" value={job.version} />
        <p>What is reserved for it is given up. It stays on the list as cancelled.</p>
        <button type="submit" class="danger">
          Cancel job {job.reference}
        </button>
      </Form>
    </details>
  );
}
