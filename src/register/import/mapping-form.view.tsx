import { Choice, Form, Tick } from '../../web/components/form.js';
import { fieldName } from './field-names.js';
import { FIELDS, type Field } from './fields.js';
import type { DryRun } from './import.service.js';
import { plainWords } from './plain-words.js';

const DATE_ORDERS = [
  { value: 'dayFirst', label: 'day first: 09/05 is 9 May' },
  { value: 'monthFirst', label: 'month first: 09/05 is 5 September' },
];
const DECIMAL_MARKS = [
  { value: 'point', label: 'with a point: 2.5' },
  { value: 'comma', label: 'with a comma: 2,5' },
];
const REFUSED = 'nothing: refuse them';

/** How the file is read, to look over and change. What is chosen is kept for the next file with the same headings. */
export function MappingForm({ run }: { run: DryRun }) {
  const { upload, examination } = run;
  return (
    <section class="sheet">
      <h2>How the file is read</h2>
      <p class="lede">
        Change what is not right and look again. It is kept for the next file with the same headings.
      </p>
      <Form action={`/register/import/${upload.id}/mapping`}>
        <Columns run={run} />
        <Words run={run} />
        <Conventions run={run} />
        <Tick
          label="The reports of these examinations are on file. Without this, gear whose report must be on file is refused until its page says so."
          name="reportsOnFile"
          ticked={examination.mapping.reportsOnFile}
        />
        <button type="submit" class="quiet">
          Look again
        </button>
      </Form>
    </section>
  );
}

/** Dates, decimals, and what goes without saying in this file. */
function Conventions({ run }: { run: DryRun }) {
  const { mapping, conventions } = run.examination;
  return (
    <div class="fields">
      <Choice
        label="Dates with strokes are"
        name="dateOrder"
        value={mapping.dateOrder}
        options={DATE_ORDERS}
        blank={`as the file tells${told(DATE_ORDERS, conventions.dateOrder)}`}
      />
      <Choice
        label="Decimals are written"
        name="decimalMark"
        value={mapping.decimalMark}
        options={DECIMAL_MARKS}
        blank={`as the file tells${told(DECIMAL_MARKS, conventions.decimalMark)}`}
      />
      <UnitChoice
        label="Plain numbers under a length are"
        name="lengthUnit"
        value={mapping.lengthUnit}
        units={['m', 'mm', 'cm', 'ft', 'in']}
      />
      <UnitChoice
        label="Plain numbers that rate by mass are"
        name="massUnit"
        value={mapping.massUnit}
        units={['kg', 't', 'lb']}
      />
      <UnitChoice
        label="Plain numbers that rate straps are"
        name="forceUnit"
        value={mapping.forceUnit}
        units={['daN', 'kN', 'kgf', 'lbf']}
      />
      <Choice
        label="Rows that name no store belong to"
        name="storeId"
        value={mapping.storeId === null ? '' : String(mapping.storeId)}
        options={storeOptions(run)}
        blank={REFUSED}
      />
    </div>
  );
}

/** A list of names that come more than once must arrive as a list, even where there is one column only. */
function Columns({ run: { examination, facts } }: { run: DryRun }) {
  const sizes = facts.kinds.flatMap((kind) => kind.dimensions).filter(({ name }) => name !== 'lengthM');
  const fields: Field[] = [...FIELDS, ...new Set(sizes.map(({ name }) => `size.${name}` as const))];
  return (
    <fieldset>
      <legend>What each column holds</legend>
      <div class="fields">
        {examination.headings.map((heading, column) => (
          <div class="field">
            <label for={`column-${column}`}>
              {heading === '' ? `Column ${column + 1}, without a heading` : heading}
            </label>
            <select id={`column-${column}`} name="columns[]">
              <option value="">left out</option>
              {fields.map((field) => (
                <option value={field} selected={examination.mapping.columns[column] === field}>
                  {fieldName(field)}
                </option>
              ))}
            </select>
          </div>
        ))}
      </div>
    </fieldset>
  );
}

/** The words of the file that nobody knows yet, and those that were explained before. */
function Words({ run }: { run: DryRun }) {
  const { mapping, rows } = run.examination;
  const unknown = (code: string) =>
    rows.faulty.flatMap(({ faults }) =>
      faults.flatMap((fault) => (fault.code === code ? [plainWords(fault.cell ?? '')] : [])),
    );
  const kinds = [...new Set([...Object.keys(mapping.kinds), ...unknown('unknown_kind')])].slice(
    0,
    WORDS_ASKED,
  );
  const stores = [...new Set([...Object.keys(mapping.stores), ...unknown('unknown_store')])].slice(
    0,
    WORDS_ASKED,
  );
  const kindOptions = run.facts.kinds.map(({ kind, name }) => ({ value: kind, label: name }));
  return (
    <>
      <WordChoices
        legend="Words for kinds of gear"
        name="kinds"
        member="kind"
        words={kinds}
        chosen={mapping.kinds}
        options={kindOptions}
      />
      <WordChoices
        legend="Words for stores"
        name="stores"
        member="storeId"
        words={stores}
        chosen={mapping.stores}
        options={storeOptions(run)}
      />
    </>
  );
}

const WORDS_ASKED = 100;

function WordChoices({
  legend,
  name,
  member,
  words,
  chosen,
  options,
}: {
  legend: string;
  name: string;
  member: string;
  words: readonly string[];
  chosen: Readonly<Record<string, string | number>>;
  options: readonly { readonly value: string; readonly label: string }[];
}) {
  if (words.length === 0) return null;
  return (
    <fieldset>
      <legend>{legend}</legend>
      {words.map((word, index) => (
        <>
          <input type="hidden" name={`${name}[${index}].word`} value={word} />
          <Choice
            label={`'${word}' is`}
            name={`${name}[${index}].${member}`}
            value={String(chosen[word] ?? '')}
            options={options}
            blank="not known: refuse its rows"
          />
        </>
      ))}
    </fieldset>
  );
}

function UnitChoice({
  label,
  name,
  value,
  units,
}: {
  label: string;
  name: string;
  value: string | null;
  units: readonly string[];
}) {
  const options = units.map((unit) => ({ value: unit, label: unit }));
  return <Choice label={label} name={name} value={value ?? ''} options={options} blank={REFUSED} />;
}

function storeOptions({ facts }: DryRun): { value: string; label: string }[] {
  return facts.stores.map(({ id, name }) => ({ value: String(id), label: name }));
}

function told(
  options: readonly { readonly value: string; readonly label: string }[],
  convention: string,
): string {
  const option = options.find(({ value }) => value === convention);
  return option ? ` (${option.label})` : ' (it does not)';
}
