import type { Problem } from '../problem.js';
import { Field } from '../web/components/form.js';
import type { ItemForm } from './item-form.js';

const FIELDS = ['owner', 'hiredFrom', 'hiredTo'];

/** Whose it is and how long it is on hire, folded away for the company's own gear. */
export function HireFields({ form, problem }: { form: ItemForm; problem: Problem | undefined }) {
  const value = (name: string) => {
    const text = form[name];
    return typeof text === 'string' ? text : '';
  };
  const isWrong = problem?.more.errors?.some(({ field }) => FIELDS.includes(field)) ?? false;
  return (
    <details open={isWrong || FIELDS.some((name) => value(name) !== '')}>
      <summary>Hired in</summary>
      <p>Blank for the company's own. It is refused for jobs that are not within the days of the hire.</p>
      <div class="fields">
        <Field label="Owner" name="owner" value={value('owner')} hint="Whose it is." problem={problem} />
        <Field
          label="First day of hire"
          name="hiredFrom"
          type="date"
          value={value('hiredFrom')}
          problem={problem}
        />
        <Field
          label="Last day of hire"
          name="hiredTo"
          type="date"
          value={value('hiredTo')}
          problem={problem}
        />
      </div>
    </details>
  );
}
