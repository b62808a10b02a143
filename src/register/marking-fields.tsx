import type { Problem } from '../problem.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { Choice, Field } from '../web/components/form.js';
import { MEASURE_NAMES } from '../web/sentences/words.js';
import { rowsWith, type ItemForm } from './item-form.js';

interface MarkingFieldsProps {
  readonly kind: KindDefinition;
  readonly form: ItemForm;
  readonly problem: Problem | undefined;
}

/** What the kind is rated and measured by: every marking on record with a blank row after it, and each dimension. */
export function MarkingFields({ kind, form, problem }: MarkingFieldsProps) {
  const { rating, dimensions } = kind;
  const sizes: object =
    typeof form['dimensions'] === 'object' && form['dimensions'] !== null ? form['dimensions'] : {};
  return (
    <>
      {rating ? <Markings rating={rating} form={form} problem={problem} /> : null}
      {dimensions.length > 0 ? (
        <fieldset class="fields">
          <legend>Sizes</legend>
          {dimensions.map(({ name, label, unit, required }) => (
            <Field
              key={name}
              label={`${label[0]?.toUpperCase()}${label.slice(1)}, in ${unit}`}
              name={`dimensions.${name}`}
              value={shown(Reflect.get(sizes, name))}
              required={required}
              problem={problem}
            />
          ))}
        </fieldset>
      ) : null}
    </>
  );
}

function Markings({
  rating,
  form,
  problem,
}: Omit<MarkingFieldsProps, 'kind'> & { rating: NonNullable<KindDefinition['rating']> }) {
  const rows: Record<string, unknown>[] = [...rowsWith('value', form['markings']), {}];
  const name = MEASURE_NAMES[rating.measure];
  return (
    <>
      {rows.map((row, number) => (
        <fieldset class="fields" key={number}>
          <legend>{number === 0 ? `The ${name} as marked` : `Another ${name}`}</legend>
          <input type="hidden" name={`markings[${number}].measure`} value={rating.measure} />
          <Field
            label="Figure"
            name={`markings[${number}].value`}
            value={shown(row['value'])}
            problem={problem}
          />
          <Choice
            label="Unit"
            name={`markings[${number}].unit`}
            value={shown(row['unit'])}
            options={rating.units.map((unit) => ({ value: unit, label: unit }))}
            problem={problem}
          />
          <Field
            label="Holds for"
            name={`markings[${number}].condition`}
            value={shown(row['condition'])}
            hint="As marked, such as straight pull or per side; blank when nothing is marked."
            problem={problem}
          />
        </fieldset>
      ))}
    </>
  );
}

function shown(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
