import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import type { ItemView } from '../register/register.dto.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import { Form } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { page } from '../web/page.js';
import {
  DefectFields,
  ExaminerFields,
  FindingFields,
  ItemFields,
  ReleaseField,
} from './examination-fields.js';
import type { ExaminationForm } from './examination-form.js';
import { PlaceNote } from './examination-place-note.js';
import { text } from './forms.view.js';

/** What the form of a report is made from. */
export interface ExaminationFormProps {
  readonly me: Actor;
  readonly item: ItemView;
  readonly scheme: SchemeDefinition;
  readonly form: ExaminationForm;
  /** Whether the item is out of service, or has a defect open, so that a pass may release it. */
  readonly mayRelease: boolean;
  readonly problem?: Problem | undefined;
}

/** The report of a thorough examination, to fill in, in the order of the Schedule. Nothing is signed here yet. */
export function examinationFormPage(props: ExaminationFormProps): string {
  const { me, item, scheme, form, problem, mayRelease } = props;
  const supersedesId = text(form['supersedesId']);
  const title =
    supersedesId === '' ? 'Thorough examination' : `Correct the examination of record ${supersedesId}`;
  const path = `/register/${item.id}/examination`;
  return page(
    { title: `${title}: ${item.tag}`, actor: me, path },
    <section class="sheet report-form">
      <p class="crumbs">
        <a href="/register">Register</a> › <a href={`/register/${item.id}`}>{item.tag}</a>
      </p>
      <h1>
        {title}: {item.tag}
      </h1>
      <p class="lede">
        Fill in what you found. The whole report is shown before you sign it. What is on record is filled in
        already: check it against the plate.
      </p>
      <PlaceNote scheme={scheme} />
      <ProblemNote problem={problem} />
      <Form action={`${path}/check`}>
        {supersedesId === '' ? null : <input type="hidden" name="supersedesId" value={supersedesId} />}
        <ItemFields form={form} problem={problem} />
        <FindingFields form={form} problem={problem} />
        <DefectFields form={form} problem={problem} />
        <ExaminerFields form={form} problem={problem} examinerName={me.name} />
        {mayRelease && supersedesId === '' ? <ReleaseField form={form} item={item} /> : null}
        <button type="submit">Show the whole report</button>
      </Form>
    </section>,
  );
}
