import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import type { ItemView } from '../register/register.dto.js';
import type { CheckFigure, CheckPoint, FigureUnit } from '../rules/checks/checklist.js';
import { UNITS_OF_FIGURE } from '../rules/checks/read-figure.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { JobView } from '../jobs/jobs.dto.js';
import { Form } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { CONDITION_NAMES } from '../web/sentences/words.js';
import type { CheckForm } from './check-form.js';

/** What the form of a check needs. `done` is the item that was checked just before. */
export interface CheckPageProps {
  readonly me: Actor;
  readonly item: ItemView;
  readonly kind: KindDefinition;
  readonly job?: Pick<JobView, 'id' | 'reference'>;
  readonly done?: Pick<ItemView, 'id' | 'tag' | 'condition'>;
  readonly form: CheckForm;
  readonly problem?: Problem;
}

/** The check of one item, point by point. There is no button that passes them all. */
export function checkPage({ me, item, kind, job, done, form, problem }: CheckPageProps): string {
  const path = `/register/${item.id}/check`;
  let figures = 0;
  return page(
    { title: `Check before use: ${item.tag}`, actor: me, path },
    <section class="sheet narrow">
      <Crumbs item={item} job={job} />
      <h1>
        Check before use: <span class="tag">{item.tag}</span>
      </h1>
      <p class="lede">
        {kind.name}
        {item.serial === null ? ', serial number unknown' : `, serial number ${item.serial}`}. Compare the
        plate before you start.
      </p>
      <Done item={done} />
      {item.condition === 'inService' ? null : (
        <p class="note note-refused">
          It is {CONDITION_NAMES[item.condition]}: not to be used, whatever this check finds.
        </p>
      )}
      <ProblemNote problem={problem} />
      <Form action={path}>
        {job ? <input type="hidden" name="jobId" value={job.id} /> : null}
        {kind.checklist.map((point, index) => {
          const first = figures;
          figures += point.figures.length;
          return (
            <Point key={point.key} point={point} place={{ index, first }} form={form} problem={problem} />
          );
        })}
        <button type="submit">Record the check of {item.tag}</button>
      </Form>
      <p>
        This check is the user's. It does not replace the maker's instructions or an examination by a
        competent person. When in doubt, it is bad.
      </p>
    </section>,
  );
}

function Crumbs({ item, job }: { item: ItemView; job: CheckPageProps['job'] | undefined }) {
  return (
    <p class="crumbs">
      {job ? (
        <>
          <a href={`/jobs/${job.id}`}>{job.reference}</a> › <a href={`/jobs/${job.id}/checks`}>Checks</a>{' '}
          ›{' '}
        </>
      ) : (
        <>
          <a href="/register">Register</a> ›{' '}
        </>
      )}
      <a href={`/register/${item.id}`}>{item.tag}</a>
    </p>
  );
}

/** What came of the item before: seen before the next one is begun. */
function Done({ item }: { item: CheckPageProps['done'] }) {
  if (!item) return null;
  const inService = item.condition === 'inService';
  return (
    <p class={inService ? 'note note-ok' : 'note note-refused'} role="status">
      <StateMark
        state={inService ? 'ok' : 'refused'}
        word={
          inService
            ? `The check of ${item.tag} is recorded.`
            : `${item.tag} is ${CONDITION_NAMES[item.condition]}: put it aside, nobody may use it.`
        }
      />{' '}
      <a href={`/register/${item.id}`}>See {item.tag}</a>
    </p>
  );
}

interface PointProps {
  readonly point: CheckPoint;
  /** Which point of the list it is, and the number of its first figure among all figures of the form. */
  readonly place: { readonly index: number; readonly first: number };
  readonly form: CheckForm;
  readonly problem: Problem | undefined;
}

function Point({ point, place: { index, first }, form, problem }: PointProps) {
  const given = form.answers[index];
  const name = `answers[${index}]`;
  const error = errorUnder(problem, name);
  return (
    <fieldset aria-describedby={error === undefined ? undefined : `point-${index}-error`}>
      <legend>{point.look}</legend>
      <p>
        <strong>Bad:</strong> {point.failsWhen}
      </p>
      <input type="hidden" name={`${name}.point`} value={point.key} />
      <p class="verdicts">
        <Verdict name={`${name}.answer`} value="good" label="Good" chosen={given?.['answer'] === 'good'} />
        <Verdict name={`${name}.answer`} value="bad" label="Bad" chosen={given?.['answer'] === 'bad'} />
      </p>
      {point.figures.map((figure, place) => (
        <Measured
          key={figure.name}
          figure={figure}
          at={index}
          number={first + place}
          given={given?.['figures']}
        />
      ))}
      <label for={`point-${index}-remarks`}>
        Remarks<span class="visually-hidden">: {point.look}</span>
      </label>
      <input
        id={`point-${index}-remarks`}
        name={`${name}.remarks`}
        value={textOf(given?.['remarks'])}
        autocomplete="off"
      />
      {error === undefined ? null : (
        <p class="field-error" id={`point-${index}-error`}>
          {error}
        </p>
      )}
    </fieldset>
  );
}

function Verdict(props: { name: string; value: 'good' | 'bad'; label: string; chosen: boolean }) {
  return (
    <label class={`verdict verdict-${props.value}`}>
      <input type="radio" name={props.name} value={props.value} checked={props.chosen} required />{' '}
      <span>{props.label}</span>
    </label>
  );
}

function Measured(props: { figure: CheckFigure; at: number; number: number; given: unknown }) {
  const { figure, at, number, given } = props;
  const name = `figures[${number}]`;
  const id = `figure-${number}`;
  const entered = recordAt(given, figure.name);
  const units: readonly FigureUnit[] = UNITS_OF_FIGURE[figure.measures];
  return (
    <div class="field measured">
      <label for={id}>{figure.label}, if measured</label>
      <input type="hidden" name={`${name}.at`} value={at} />
      <input type="hidden" name={`${name}.name`} value={figure.name} />
      <input
        id={id}
        name={`${name}.value`}
        // An inch is written as a fraction too, for which a keypad of numbers has no stroke.
        inputmode={units.includes('in') ? undefined : 'decimal'}
        autocomplete="off"
        value={textOf(entered?.['value'])}
      />{' '}
      {units.length > 1 ? (
        <select name={`${name}.unit`} aria-label={`Unit of ${figure.label.toLowerCase()}`}>
          {units.map((unit) => (
            <option key={unit} value={unit} selected={unit === entered?.['unit']}>
              {unit}
            </option>
          ))}
        </select>
      ) : (
        <input type="hidden" name={`${name}.unit`} value={units[0]} />
      )}
    </div>
  );
}

/** The first error at a field or anywhere under it. */
function errorUnder(problem: Problem | undefined, name: string): string | undefined {
  return problem?.more.errors?.find(({ field }) => field === name || field.startsWith(`${name}.`))?.message;
}

function recordAt(value: unknown, name: string): Record<string, unknown> | undefined {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, name)) return undefined;
  const entry: unknown = Reflect.get(value, name);
  return typeof entry === 'object' && entry !== null ? { ...entry } : undefined;
}

function textOf(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
