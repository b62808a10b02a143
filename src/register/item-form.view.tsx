import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { StoreView } from '../stores/stores.dto.js';
import { Choice, Field, Form, Tick } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { page } from '../web/page.js';
import { INSPECTION_NAMES } from '../web/sentences/words.js';
import { rowsWith, type ItemForm } from './item-form.js';
import { HireFields } from './hire-fields.js';
import { LoadChartFields } from './load-chart-fields.js';
import { MarkingFields } from './marking-fields.js';
import { INTERVAL_TYPES } from './register.dto.js';

interface ItemFormPage {
  readonly me: Actor;
  readonly kind: KindDefinition;
  readonly stores: readonly StoreView[];
  readonly form: ItemForm;
  readonly problem?: Problem;
}

/** The first step of entering an item: what it is decides what is asked of it. */
export function chooseKindPage({ me, kinds }: { me: Actor; kinds: readonly KindDefinition[] }): string {
  return page(
    { title: 'Enter an item', actor: me, path: '/register/new' },
    <>
      <Crumbs />
      <h1>What is it?</h1>
      <ul class="cards">
        {kinds.map(({ kind, name, alsoCalled }) => (
          <li class="card" key={kind}>
            <h2>
              <a href={`/register/new?kind=${encodeURIComponent(kind)}`}>{name}</a>
            </h2>
            <p class="faded">{alsoCalled.slice(0, 4).join(', ')}</p>
          </li>
        ))}
      </ul>
    </>,
  );
}

/** The form for a new item of a kind. */
export function newItemPage({ me, kind, stores, form, problem }: ItemFormPage): string {
  return page(
    { title: 'Enter an item', actor: me, path: '/register/new' },
    <>
      <Crumbs />
      <h1>Enter a {kind.name.toLowerCase()}</h1>
      <p class="lede">
        Copy what the plate or label shows, as it is marked. It enters the register in service, and
        unexamined.
      </p>
      <ProblemNote problem={problem} />
      <Form action="/register/new">
        <ItemFields kind={kind} stores={stores} form={form} problem={problem} />
        <button type="submit">Enter it</button>
      </Form>
    </>,
  );
}

/** The form to change an item. */
export function editItemPage({
  me,
  kind,
  stores,
  form,
  problem,
  id,
  tag,
}: ItemFormPage & { id: number; tag: string }): string {
  return page(
    { title: `Change ${tag}`, actor: me, path: `/register/${id}/edit` },
    <>
      <p class="crumbs">
        <a href="/register">Register</a> › <a href={`/register/${id}`}>{tag}</a>
      </p>
      <h1>Change {tag}</h1>
      <ProblemNote problem={problem} />
      <Form action={`/register/${id}/edit`}>
        <input type="hidden" name="version" value={text(form['version'])} />
        <ItemFields kind={kind} stores={stores} form={form} problem={problem} />
        <button type="submit">Save</button>
      </Form>
    </>,
  );
}

function Crumbs() {
  return (
    <p class="crumbs">
      <a href="/register">Register</a>
    </p>
  );
}

interface FieldsProps {
  readonly kind: KindDefinition;
  readonly stores: readonly StoreView[];
  readonly form: ItemForm;
  readonly problem: Problem | undefined;
}

function ItemFields({ kind, stores, form, problem }: FieldsProps) {
  const value = (name: string) => text(form[name]);
  const storeOptions = stores.map(({ id, name }) => ({ value: String(id), label: name }));
  return (
    <>
      <input type="hidden" name="kind" value={kind.kind} />
      <fieldset class="fields">
        <legend>Which one it is</legend>
        <Field
          label="Tag"
          name="tag"
          value={value('tag')}
          hint="The company's own mark on it."
          required
          problem={problem}
        />
        <Choice
          label="Store"
          name="storeId"
          value={value('storeId')}
          options={storeOptions}
          problem={problem}
        />
        <Field label="Maker" name="maker" value={value('maker')} required problem={problem} />
        <Field label="Serial number" name="serial" value={value('serial')} problem={problem} />
        <Field
          label="Batch"
          name="batch"
          value={value('batch')}
          hint="The maker's batch or lot, where the plate or the certificate names one."
          problem={problem}
        />
        <Tick
          label="The serial number cannot be read"
          name="serialUnknown"
          ticked={form['serialUnknown'] === true}
        />
        {problem?.code === 'serial_looks_alike' ? (
          <Tick label="I have read the plate again: these are two items" name="acceptLookAlike" />
        ) : null}
        <Tick
          label="The label or plate can be read"
          name="labelLegible"
          ticked={form['labelLegible'] !== false}
        />
      </fieldset>
      <MarkingFields kind={kind} form={form} problem={problem} />
      {kind.loadChart === true ? <LoadChartFields form={form} problem={problem} /> : null}
      <PaperFields form={form} problem={problem} />
      <HireFields form={form} problem={problem} />
      <IntervalFields form={form} problem={problem} />
      <Field label="Notes" name="notes" value={value('notes')} problem={problem} />
    </>
  );
}

function PaperFields({ form, problem }: Pick<FieldsProps, 'form' | 'problem'>) {
  const value = (name: string) => text(form[name]);
  return (
    <fieldset class="fields">
      <legend>Papers and days</legend>
      <Field
        label="Made on"
        name="manufacturedOn"
        type="date"
        value={value('manufacturedOn')}
        problem={problem}
      />
      <Field
        label="First used on"
        name="firstUsedOn"
        type="date"
        value={value('firstUsedOn')}
        problem={problem}
      />
      <Field
        label="Maker's declaration of"
        name="declarationOn"
        type="date"
        value={value('declarationOn')}
        problem={problem}
      />
      <Tick
        label="A report or certificate is on file"
        name="certificateOnFile"
        ticked={form['certificateOnFile'] === true}
      />
    </fieldset>
  );
}

/** Intervals of the item's own, one row to a type; those filled in come first, so that each error stays with its row. */
function IntervalFields({ form, problem }: Pick<FieldsProps, 'form' | 'problem'>) {
  const filled = rowsWith('months', form['writtenSchemes']);
  const blank = INTERVAL_TYPES.filter((type) => !filled.some((row) => row['type'] === type)).map((type) => ({
    type,
  }));
  const rows: Record<string, unknown>[] = [...filled, ...blank];
  return (
    <details open={filled.length > 0}>
      <summary>Intervals of its own</summary>
      <p>
        Shorter than the rules of the store: as you like. Longer: only with a scheme of examination that a
        competent person drew up.
      </p>
      {rows.map((row, number) => (
        <fieldset class="fields" key={text(row['type'])}>
          <legend>
            {INTERVAL_TYPES.filter((type) => type === row['type']).map((type) => INSPECTION_NAMES[type])}
          </legend>
          <input type="hidden" name={`writtenSchemes[${number}].type`} value={text(row['type'])} />
          <Field
            label="Months"
            name={`writtenSchemes[${number}].months`}
            value={text(row['months'])}
            problem={problem}
          />
          <Field
            label="Reference"
            name={`writtenSchemes[${number}].reference`}
            value={text(row['reference'])}
            problem={problem}
          />
        </fieldset>
      ))}
    </details>
  );
}

/** A form value as an input shows it. */
export function text(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}
