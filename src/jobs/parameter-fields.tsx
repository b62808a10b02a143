import type { Problem } from '../problem.js';
import { CALCULATIONS, PARAMETERS, type MethodParameter } from '../rules/calculations/parameter.js';
import { Field } from '../web/components/form.js';
import { figure } from '../web/sentences/words.js';
import { CALCULATION_TITLES } from './calculation-words.js';
import { rows, type JobChoices, type JobForm } from './job-form.js';

interface ParameterFieldsProps {
  readonly choices: JobChoices;
  readonly form: JobForm;
  readonly problem: Problem | undefined;
}

/** The figures that the calculations start from, in the parts of the sheet. What a job must state stands open. */
export function ParameterFields({ choices, form, problem }: ParameterFieldsProps) {
  const parameters = choices.methods.find(({ method }) => method === form['method'])?.parameters ?? [];
  const stated = rows(form['parameters']);
  const parts = CALCULATIONS.map((calculation) => ({
    calculation,
    entries: parameters
      .map((parameter, place) => ({ parameter, ...statedRow(stated, parameter, place) }))
      .filter(({ parameter }) => PARAMETERS[parameter.key].group === calculation),
  })).filter(({ entries }) => entries.length > 0);
  return (
    <section class="sheet" id="figures">
      <h2>Figures of the calculation</h2>
      <p>
        The method’s figure holds where nothing is written. A figure of this job needs where it is from: a
        plate, a drawing, a letter, a measurement.
      </p>
      {parts.map(({ calculation, entries }) => (
        <details
          key={calculation}
          open={entries.some(({ parameter, row }) => row !== undefined || mustBeStated(parameter))}
        >
          <summary>{CALCULATION_TITLES[calculation]}</summary>
          {entries.map(({ parameter, index, row }) => (
            <ParameterRow
              key={parameter.key}
              name={`parameters[${index}]`}
              {...{ parameter, row, problem }}
            />
          ))}
        </details>
      ))}
    </section>
  );
}

function ParameterRow({
  name,
  parameter: { key, label, value, optional, least, most, caution },
  row,
  problem,
}: {
  name: string;
  parameter: MethodParameter;
  row: Row | undefined;
  problem: Problem | undefined;
}) {
  const { unit } = PARAMETERS[key];
  const held = value === null ? (optional ? 'none by the method' : 'to be stated') : figure(value, unit);
  return (
    <div class="fields stated">
      <input type="hidden" name={`${name}.key`} value={key} />
      <Field
        label={`${capital(label)}${unit ? ` (${unit})` : ''}`}
        name={`${name}.value`}
        value={text(row?.['value'])}
        size="short"
        hint={`Method: ${held}. From ${least} to ${most}.${caution ? ` ${caution}` : ''}`}
        problem={problem}
      />
      <Field
        label="Where it is from"
        name={`${name}.reason`}
        value={text(row?.['reason'])}
        problem={problem}
      />
    </div>
  );
}

/** What is stated keeps its place among the stated, so that a problem is shown at its own field; the others follow. */
function statedRow(stated: readonly Row[], { key }: MethodParameter, place: number): StatedRow {
  const index = stated.findIndex((row) => row['key'] === key);
  return index < 0 ? { index: stated.length + place, row: undefined } : { index, row: stated[index] };
}

interface StatedRow {
  readonly index: number;
  readonly row: Row | undefined;
}

type Row = Readonly<Record<string, unknown>>;

function mustBeStated({ value, optional }: MethodParameter): boolean {
  return value === null && !optional;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
