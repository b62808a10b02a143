import type { Problem } from '../problem.js';
import { DUTIES } from '../rules/gear/gear.js';
import { Choice, Field } from '../web/components/form.js';
import { DUTY_NAMES } from '../web/sentences/words.js';
import { rows, type JobChoices, type JobForm } from './job-form.js';

interface LineChangeProps {
  readonly choices: JobChoices;
  readonly form: JobForm;
  readonly problem: Problem | undefined;
}

/** The changes to the method's lines, one fold a line, and the lines added beside them. Each needs a reason. */
export function LineChangeFields({ choices, form, problem }: LineChangeProps) {
  const lines = choices.methods.find(({ method }) => method === form['method'])?.lines ?? [];
  const adjustments = rows(form['adjustments']);
  const added = [...rows(form['addedLines']), {}];
  return (
    <section class="sheet">
      <h2>Changes to the gear lines</h2>
      <p>
        A need may go above the method's, never below: a lighter need comes from the panel schedule. A
        quantity of 0 drops a line.
      </p>
      {lines.map(({ key, label, kind }, index) => {
        const row = adjustments.find(({ lineKey }) => lineKey === key) ?? {};
        return (
          <details key={key} open={'reason' in row}>
            <summary>{label}</summary>
            <input type="hidden" name={`adjustments[${index}].lineKey`} value={key} />
            <NeedFields
              name={`adjustments[${index}]`}
              row={row}
              units={unitsOf(choices, kind)}
              problem={problem}
            />
          </details>
        );
      })}
      {added.map((row, index) => (
        <details key={index} open={'label' in row}>
          <summary>{'label' in row ? String(row['label']) : 'Add a line'}</summary>
          <AddedLineFields index={index} row={row} choices={choices} problem={problem} />
        </details>
      ))}
    </section>
  );
}

type Row = Readonly<Record<string, unknown>>;

function AddedLineFields({
  index,
  row,
  choices,
  problem,
}: {
  index: number;
  row: Row;
  choices: JobChoices;
  problem: Problem | undefined;
}) {
  const name = `addedLines[${index}]`;
  return (
    <>
      {typeof row['lineKey'] === 'string' ? (
        <input type="hidden" name={`${name}.lineKey`} value={row['lineKey']} />
      ) : null}
      <div class="fields">
        <Field label="Name of the line" name={`${name}.label`} value={text(row['label'])} problem={problem} />
        <Choice
          label="Kind"
          name={`${name}.kind`}
          value={text(row['kind'])}
          options={choices.kinds.map(({ kind, name: kindName }) => ({ value: kind, label: kindName }))}
          problem={problem}
        />
        <Choice
          label="Duty"
          name={`${name}.duty`}
          value={text(row['duty'])}
          options={DUTIES.map((duty) => ({ value: duty, label: DUTY_NAMES[duty] }))}
          problem={problem}
        />
      </div>
      <NeedFields name={name} row={row} units={ALL_UNITS} problem={problem} />
      <HitchFields name={name} row={row} choices={choices} problem={problem} />
    </>
  );
}

/** How a sling is hitched: the rating above is then the load on the hitch. */
function HitchFields({
  name,
  row,
  choices,
  problem,
}: { name: string; row: Row } & Omit<LineChangeProps, 'form'>) {
  const hitch: object = typeof row['hitch'] === 'object' && row['hitch'] !== null ? row['hitch'] : {};
  const modes = choices.kinds.flatMap(({ hitches = [] }) => hitches);
  return (
    <div class="fields">
      <Choice
        label="Hitch, for a sling"
        name={`${name}.hitchMode`}
        value={text(Reflect.get(hitch, 'mode'))}
        options={modes.map(({ mode, label }) => ({ value: mode, label }))}
        blank="none: each is rated as above"
        hint="With a hitch, the rating above is the load on it."
        problem={problem}
      />
      <Field
        label="Leg to the vertical, degrees"
        name={`${name}.hitchAngleDeg`}
        size="short"
        value={text(Reflect.get(hitch, 'angleDeg'))}
        problem={problem}
      />
    </div>
  );
}

const ALL_UNITS = ['kg', 't', 'lb', 'daN', 'kN', 'persons'];

function NeedFields({
  name,
  row,
  units,
  problem,
}: {
  name: string;
  row: Row;
  units: readonly string[];
  problem: Problem | undefined;
}) {
  const rating: object = typeof row['rating'] === 'object' && row['rating'] !== null ? row['rating'] : {};
  return (
    <div class="fields">
      <Field
        label="Quantity"
        name={`${name}.quantity`}
        type="number"
        size="short"
        value={text(row['quantity'])}
        problem={problem}
      />
      {units.length > 0 ? (
        <>
          <Field
            label="Each rated at least"
            name={`${name}.ratingValue`}
            size="short"
            value={text(Reflect.get(rating, 'value'))}
            problem={problem}
          />
          <Choice
            label="Unit"
            name={`${name}.ratingUnit`}
            value={text(Reflect.get(rating, 'unit'))}
            options={units.map((unit) => ({ value: unit, label: unit }))}
            problem={problem}
          />
        </>
      ) : null}
      <Field
        label="Least length, m"
        name={`${name}.lengthM`}
        size="short"
        value={text(row['lengthM'])}
        problem={problem}
      />
      <Field label="Reason" name={`${name}.reason`} value={text(row['reason'])} problem={problem} />
    </div>
  );
}

function unitsOf({ kinds }: JobChoices, kind: string): readonly string[] {
  return kinds.find((known) => known.kind === kind)?.rating?.units ?? [];
}

function text(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}
