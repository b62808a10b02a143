import type { ComponentChildren } from 'preact';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { Choice, Field, Form, Tick } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { page } from '../web/page.js';
import { rows, type JobChoices, type JobForm } from './job-form.js';
import { JobCrumbs } from './job-links.view.js';
import { ParameterFields } from './parameter-fields.js';
import { LineChangeFields } from './line-change-fields.js';
import { PanelFields } from './panel-fields.js';

interface JobFormProps {
  readonly me: Actor;
  readonly choices: JobChoices;
  readonly form: JobForm;
  readonly problem?: Problem;
  /** Present when an existing job is edited. */
  readonly job?: { readonly id: number; readonly reference: string; readonly version: number };
  /** What the change would do, shown above the form that it was asked from. */
  readonly preview?: ComponentChildren;
}

const COUNTS = [
  { name: 'crews', label: 'Crews' },
  { name: 'liftersInUse', label: 'Lifters in use at one time' },
  { name: 'panelsOnWheels', label: 'Panels on wheels at one time' },
  { name: 'trucksUnloading', label: 'Trucks unloading at one time' },
  { name: 'personsAloft', label: 'Persons aloft' },
] as const;

/** The form of a new job, or of one that is edited. */
export function jobFormPage({ me, choices, form, problem, job, preview }: JobFormProps): string {
  const action = job ? `/jobs/${job.id}/edit` : '/jobs';
  return page(
    {
      title: job ? `Edit job ${job.reference}` : 'New job',
      actor: me,
      path: job ? `/jobs/${job.id}/edit` : '/jobs/new',
    },
    <>
      <JobCrumbs {...(job && { job })} />
      <h1>{job ? `Edit job ${job.reference}` : 'New job'}</h1>
      <ProblemNote problem={problem} />
      {preview}
      <Form action={action}>
        {job ? <input type="hidden" name="version" value={text(form['version']) || job.version} /> : null}
        <WhenAndWhere choices={choices} form={form} problem={problem} />
        <Counts form={form} problem={problem} />
        <section class="sheet">
          <h2>Panel schedule</h2>
          <p>
            Give the mass as weighed, or the mass per area to estimate it from, with the fittings that it
            leaves out. The centre of gravity is taken in the middle of the height unless you say how far off
            it lies.
          </p>
          <PanelFields panels={rows(form['panels'])} problem={problem} />
          <div class="field long">
            <label for="panelsCsv">Or paste the schedule as a table</label>
            <p class="hint" id="panelsCsv-hint">
              With a heading line that names the units, such as Panel, Height (mm), Width (mm), Thickness
              (mm), Mass (kg), Packing (kg), Qty. What is pasted takes the place of the rows above.
            </p>
            <textarea id="panelsCsv" name="panelsCsv" rows={5} aria-describedby="panelsCsv-hint">
              {text(form['panelsCsv'])}
            </textarea>
          </div>
        </section>
        {job ? <MethodFields choices={choices} form={form} problem={problem} /> : null}
        <p class="actions">
          <button type="submit">{job ? 'Save the job' : 'Make the job'}</button>
          {job ? (
            <button type="submit" class="quiet" formAction={`/jobs/${job.id}/what-if`}>
              See what would change
            </button>
          ) : null}
        </p>
      </Form>
      {job ? <ScheduleUpload job={job} /> : null}
    </>,
  );
}

function ScheduleUpload({ job: { id, version } }: { job: NonNullable<JobFormProps['job']> }) {
  return (
    <section class="sheet">
      <h2>Schedule from a file</h2>
      <Form action={`/jobs/${id}/panels?version=${version}`} label="Panel schedule from a file" multipart>
        <div class="field">
          <label for="file">CSV or XLSX file with a heading line that names the units</label>
          <p class="hint">
            It takes the place of the whole schedule. What is typed above is not saved with it.
          </p>
          <input id="file" name="file" type="file" accept=".csv,.tsv,.txt,.xlsx" required />
        </div>
        <button type="submit" class="quiet">
          Take the schedule from the file
        </button>
      </Form>
    </section>
  );
}

/** What depends on the method of the job, so that it is asked for once the job is made. */
function MethodFields(props: PartProps) {
  return (
    <>
      <ParameterFields {...props} />
      <TruckTimes times={props.form['truckTimes']} />
      <LineChangeFields {...props} />
    </>
  );
}

function TruckTimes({ times }: { times: unknown }) {
  const lines = Array.isArray(times) ? times.map((time) => String(time).replace('T', ' ')) : [];
  return (
    <section class="sheet">
      <h2>Trucks with panels</h2>
      <div class="field long">
        <label for="truckTimes">When trucks are ordered, one a line, earliest first</label>
        <p class="hint" id="truckTimes-hint">
          Such as 2026-12-01 08:30, in the time of the site. Left empty, each truck comes as early as the
          trolleys allow.
        </p>
        <textarea id="truckTimes" name="truckTimes" rows={4} aria-describedby="truckTimes-hint">
          {lines.join('\n')}
        </textarea>
      </div>
    </section>
  );
}

interface PartProps {
  readonly choices: JobChoices;
  readonly form: JobForm;
  readonly problem: Problem | undefined;
}

function WhenAndWhere({ choices: { stores, schemes, methods }, form, problem }: PartProps) {
  return (
    <section class="sheet">
      <h2>When and where</h2>
      <div class="fields">
        <Field
          label="Job number"
          name="reference"
          value={text(form['reference'])}
          required
          problem={problem}
        />
        <Field label="Name" name="name" value={text(form['name'])} required problem={problem} />
        <Field label="Site" name="site" value={text(form['site'])} required problem={problem} />
        <Field
          label="Load-out day"
          name="loadOutDay"
          type="date"
          value={text(form['loadOutDay'])}
          required
          problem={problem}
        />
        <Field
          label="Back day"
          name="backDay"
          type="date"
          value={text(form['backDay'])}
          required
          problem={problem}
        />
        <Choice
          label="Store the truck loads at"
          name="storeId"
          value={text(form['storeId'])}
          options={stores.map(({ id, name }) => ({ value: String(id), label: name }))}
          problem={problem}
        />
        <Choice
          label="Inspection rules at the site"
          name="scheme"
          value={text(form['scheme'])}
          options={schemes.map(({ scheme, name }) => ({ value: scheme, label: name }))}
          problem={problem}
        />
        <Choice
          label="Method"
          name="method"
          value={text(form['method'])}
          options={methods.map(({ method, name }) => ({ value: method, label: name }))}
          blank="choose how the panels are hung"
          problem={problem}
        />
      </div>
      <Tick
        label="Gear may come from other stores too"
        name="otherStores"
        ticked={form['otherStores'] === true}
      />
    </section>
  );
}

function Counts({ form, problem }: Omit<PartProps, 'choices'>) {
  const counts: object = typeof form['counts'] === 'object' && form['counts'] !== null ? form['counts'] : {};
  return (
    <section class="sheet">
      <h2>At work at one time</h2>
      <div class="fields">
        {COUNTS.map(({ name, label }) => (
          <Field
            key={name}
            label={label}
            name={`counts.${name}`}
            type="number"
            size="short"
            value={text(Reflect.get(counts, name))}
            required
            problem={problem}
          />
        ))}
      </div>
    </section>
  );
}

function text(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}
