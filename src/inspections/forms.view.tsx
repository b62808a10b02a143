import type { ComponentChildren } from 'preact';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { EVENT_TYPES } from '../rules/gear/gear.js';
import type { ItemView } from '../register/register.dto.js';
import { Choice, Field, Form } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { page } from '../web/page.js';
import { EVENT_NAMES } from '../web/sentences/words.js';
import { SEVERITIES } from './severity.js';

/** What every form about one item is made from. */
export interface ItemFormProps {
  readonly me: Actor;
  readonly item: ItemView;
  readonly form: Readonly<Record<string, unknown>>;
  readonly problem?: Problem;
}

/** The frame of a form about one item: where one is, what is wrong, and one button. */
export function itemFormPage(
  { me, item, problem }: ItemFormProps,
  { path, title, button, danger = false }: { path: string; title: string; button: string; danger?: boolean },
  fields: ComponentChildren,
): string {
  return page(
    { title: `${title}: ${item.tag}`, actor: me, path: `/register/${item.id}/${path}` },
    <section class="sheet narrow">
      <p class="crumbs">
        <a href="/register">Register</a> › <a href={`/register/${item.id}`}>{item.tag}</a>
      </p>
      <h1>
        {title}: {item.tag}
      </h1>
      <ProblemNote problem={problem} />
      <Form action={`/register/${item.id}/${path}`}>
        {fields}
        <button type="submit" class={danger ? 'danger' : undefined}>
          {button}
        </button>
      </Form>
    </section>,
  );
}

/** Reporting a defect: open to everyone signed in, on a phone beside the item. */
export function defectPage(props: ItemFormProps): string {
  const { form, problem } = props;
  return itemFormPage(
    props,
    { path: 'defect', title: 'Report a defect', button: 'Report it' },
    <>
      <Choice
        label="How bad is it?"
        name="severity"
        value={text(form['severity'])}
        options={SEVERITIES.map((value) => ({ value, label: SEVERITY_CHOICES[value] }))}
        problem={problem}
      />
      <Field
        label="What is wrong, and where on it?"
        name="description"
        value={text(form['description'])}
        required
        problem={problem}
      />
      <Field
        label="Last day of use"
        name="lastDayOfUse"
        type="date"
        hint="For a danger by a named day only."
        value={text(form['lastDayOfUse'])}
        problem={problem}
      />
    </>,
  );
}

const SEVERITY_CHOICES: Readonly<Record<(typeof SEVERITIES)[number], string>> = {
  immediateDanger: 'A danger now: take it out of service',
  dangerByDate: 'A danger from a named day on',
  observation: 'Something to keep an eye on',
};

/** Recording something that happened. */
export function eventPage(props: ItemFormProps): string {
  const { form, problem } = props;
  return itemFormPage(
    props,
    { path: 'event', title: 'Record an event', button: 'Record it' },
    <>
      <Choice
        label="What happened?"
        name="type"
        value={text(form['type'])}
        options={EVENT_TYPES.map((value) => ({ value, label: EVENT_NAMES[value] }))}
        problem={problem}
      />
      <Field
        label="When"
        name="happenedOn"
        type="date"
        value={text(form['happenedOn'])}
        required
        problem={problem}
      />
      <Field label="Remarks" name="remarks" value={text(form['remarks'])} problem={problem} />
      <p>It may have to be examined before it is used again. The page of the item will say so.</p>
    </>,
  );
}

/** Taking out of service. */
export function quarantinePage(props: ItemFormProps): string {
  const { form, problem } = props;
  return itemFormPage(
    props,
    { path: 'quarantine', title: 'Quarantine', button: 'Take it out of service', danger: true },
    <>
      <p>Nobody may use or book it until a competent person other than you has examined and released it.</p>
      <Field label="Why" name="reason" value={text(form['reason'])} required problem={problem} />
    </>,
  );
}

/** Sending to repair. */
export function repairPage(props: ItemFormProps): string {
  const { form, problem } = props;
  return itemFormPage(
    props,
    { path: 'repair', title: 'Send to repair', button: 'Send it to repair' },
    <>
      <p>It comes back into service by a thorough examination only.</p>
      <Field
        label="What is to be put right"
        name="reason"
        value={text(form['reason'])}
        required
        problem={problem}
      />
    </>,
  );
}

/** Scrapping. */
export function scrapPage(props: ItemFormProps): string {
  const { form, problem } = props;
  return itemFormPage(
    props,
    { path: 'scrap', title: 'Scrap', button: 'Scrap it for good', danger: true },
    <>
      <p>A scrapped item never comes back. Make it unusable first, so that nobody picks it up again.</p>
      <Field label="Why" name="reason" value={text(form['reason'])} required problem={problem} />
      <Field
        label="How it was made unusable"
        name="howMadeUnusable"
        value={text(form['howMadeUnusable'])}
        hint="Such as cut through in three places."
        required
        problem={problem}
      />
    </>,
  );
}

/** A form value as an input shows it. */
export function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
