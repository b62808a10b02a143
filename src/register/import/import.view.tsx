import type { Actor } from '../../people/actor.js';
import type { Problem } from '../../problem.js';
import { Form } from '../../web/components/form.js';
import { ProblemNote } from '../../web/components/problem-note.js';
import { page } from '../../web/page.js';
import { count } from '../../web/sentences/words.js';
import { fieldName } from './field-names.js';
import { FaultTable, NoticeList } from './findings.view.js';
import type { DryRun } from './import.service.js';
import { MappingForm } from './mapping-form.view.js';

/** The page that takes a file. */
export function importPage({ me, problem }: { me: Actor; problem?: Problem }): string {
  return page(
    { title: 'Import', actor: me, path: '/register/import' },
    <>
      <p class="crumbs">
        <a href="/register">Register</a>
      </p>
      <h1>Import a file</h1>
      <p class="lede">
        Hand over the list of gear as it is. You see everything wrong with it before anything is taken.
      </p>
      <ProblemNote problem={problem} />
      <section class="sheet narrow">
        <Form action="/register/import" multipart>
          <div class="field">
            <label for="file">File</label>
            <p class="hint" id="file-hint">
              CSV or XLSX, at most 8 MB. The first sheet of a workbook is read.
            </p>
            <input
              id="file"
              name="file"
              type="file"
              required
              accept=".csv,.txt,.tsv,.xlsx,text/csv"
              aria-describedby="file-hint"
            />
          </div>
          <button type="submit">Look at the file</button>
        </Form>
      </section>
      <p>
        The register as a file to take away: <a href="/register/export.csv">CSV</a> or{' '}
        <a href="/register/export.xlsx">XLSX</a>. It can be handed over here again as it is.
      </p>
    </>,
  );
}

/** What was found in a file, how it was read, and the choice of what to take. */
export function importReportPage({
  me,
  run,
  problem,
  taken,
}: {
  me: Actor;
  run: DryRun;
  problem?: Problem;
  /** How many rows were just taken. */
  taken?: number;
}): string {
  const { upload, examination } = run;
  return page(
    { title: `Import of ${upload.fileName}`, actor: me, path: '/register/import' },
    <>
      <p class="crumbs">
        <a href="/register">Register</a> › <a href="/register/import">Import</a>
      </p>
      <h1>{upload.fileName}</h1>
      <ProblemNote problem={problem} />
      {taken === undefined ? null : <Taken taken={taken} run={run} />}
      <Counts run={run} />
      {taken === undefined || examination.rows.sound.length > 0 ? <Choices run={run} /> : null}
      <MappingForm run={run} />
      <FaultTable faulty={examination.rows.faulty} toMend={`/register/import/${upload.id}/to-mend.csv`} />
      <NoticeList notices={examination.rows.notices} />
    </>,
  );
}

function Taken({ taken, run }: { taken: number; run: DryRun }) {
  const left = run.examination.rows.faulty.length;
  return (
    <div class="note note-ok" role="status">
      <p class="note-title">● {count(taken, 'row was taken', 'rows were taken')} into the register.</p>
      {left > 0 ? (
        <p>
          {count(left, 'row was', 'rows were')} left out.{' '}
          <a href={`/register/import/${run.upload.id}/to-mend.csv`}>Take the file to mend</a>, mend it, and
          hand it over.
        </p>
      ) : null}
    </div>
  );
}

function Counts({ run: { examination } }: { run: DryRun }) {
  const { rows, skipped, total } = examination;
  return (
    <section class="sheet">
      <h2>What the file holds</h2>
      <dl class="pairs">
        <Pair name="Rows" value={total} />
        <Pair name="Sound, and new" value={rows.sound.length} />
        <Pair name="In the register already" value={rows.unchanged.length} />
        <Pair name="Faulty" value={rows.faulty.length} />
        <Pair name="Left out: blank, sums" value={skipped} />
      </dl>
    </section>
  );
}

function Pair({ name, value }: { name: string; value: number }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd class="num">{value}</dd>
    </div>
  );
}

function Choices({ run: { upload, examination } }: { run: DryRun }) {
  const { missing, rows } = examination;
  const [sound, faulty] = [rows.sound.length, rows.faulty.length];
  if (missing.length > 0) {
    return (
      <div class="note note-refused">
        <p class="note-title">✕ No row was checked yet.</p>
        <p>Say below which column holds: {missing.map(fieldName).join(', ')}.</p>
      </div>
    );
  }
  if (sound === 0) {
    return (
      <p>
        {faulty === 0
          ? 'There is nothing new in the file.'
          : 'There is no sound row to take yet. Answer what is asked below, or mend the faults.'}
      </p>
    );
  }
  return (
    <section class="sheet">
      <h2>What to take</h2>
      <div class="actions">
        <Form action={`/register/import/${upload.id}/accept`} label="Take every row or none">
          <input type="hidden" name="mode" value="allOrNothing" />
          <button type="submit" disabled={faulty > 0}>
            {faulty > 0 ? 'Take nothing until all is sound' : `Take all ${count(sound, 'row', 'rows')}`}
          </button>
        </Form>
        {faulty > 0 ? (
          <Form action={`/register/import/${upload.id}/accept`} label="Take the sound rows">
            <input type="hidden" name="mode" value="soundRows" />
            <button type="submit">
              Take the {count(sound, 'sound row', 'sound rows')}, give me the {faulty} faulty back
            </button>
          </Form>
        ) : null}
      </div>
      {faulty > 0 ? <p class="hint">To take nothing, just leave: nothing has been taken so far.</p> : null}
    </section>
  );
}
