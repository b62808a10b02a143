import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { StoreView } from '../stores/stores.dto.js';
import { Choice, Field } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { page } from '../web/page.js';
import { count } from '../web/sentences/words.js';
import type { Chosen } from './labels.service.js';
import { placeLabels, SHEET_LAYOUTS } from './sheet-layout.js';

interface LabelsPage {
  readonly me: Actor;
  readonly form: Readonly<Record<string, unknown>>;
  readonly kinds: readonly KindDefinition[];
  readonly stores: readonly StoreView[];
  readonly baseUrl: string;
  readonly chosen?: Chosen;
  readonly problem?: Problem;
}

/** Which items get a label, and on which sheet. */
export function labelsPage(props: LabelsPage): string {
  const { me, baseUrl, chosen, problem } = props;
  return page(
    { title: 'Labels', actor: me, path: '/register/labels' },
    <>
      <p class="crumbs">
        <a href="/register">Register</a>
      </p>
      <h1>Labels</h1>
      <p class="lede">
        A label carries the tag in large letters, kind, rating and serial number, and a QR code that opens the
        item's record on a phone.
      </p>
      <ProblemNote problem={problem} />
      <Address baseUrl={baseUrl} />
      <LabelForm {...props} />
      {chosen ? <Found chosen={chosen} /> : null}
    </>,
  );
}

/** Codes outlive the day: who prints them has to know where they lead. */
function Address({ baseUrl }: { baseUrl: string }) {
  const isLocal = /^https?:\/\/(localhost|127\.|\[::1\])/.test(baseUrl);
  return (
    <section class={isLocal ? 'note note-due' : 'note'}>
      <p>
        The codes lead to <code>{baseUrl}/t/…</code>
      </p>
      {isLocal ? (
        <p>
          No phone reaches that address. Start Tackleroom with <code>PUBLIC_URL</code> set to the address that
          people open before you print labels.
        </p>
      ) : null}
    </section>
  );
}

function LabelForm({ form, kinds, stores, problem }: LabelsPage) {
  const value = (name: string) => textOf(form[name]);
  return (
    <form method="get" action="/labels" class="sheet" aria-label="Choose items and a sheet">
      <fieldset>
        <legend>Which items</legend>
        {['itemId', 'jobId'].map((name) =>
          value(name) === '' ? null : <input type="hidden" key={name} name={name} value={value(name)} />,
        )}
        {value('jobId') === '' ? null : <p>The gear that is booked for this job.</p>}
        {value('itemId') === '' ? (
          <ItemChoice value={value} kinds={kinds} stores={stores} problem={problem} />
        ) : null}
      </fieldset>
      <fieldset class="fields">
        <legend>Which sheet</legend>
        <Choice
          label="Sheet"
          name="layout"
          value={value('layout')}
          options={SHEET_LAYOUTS.map(({ key, name }) => ({ value: key, label: name }))}
          problem={problem}
        />
        <Field
          label="First label"
          name="start"
          type="number"
          size="short"
          value={value('start') || '1'}
          hint="1 for a new sheet; row by row, the first that is still there."
          problem={problem}
        />
      </fieldset>
      <p class="actions">
        <button type="submit" class="quiet">
          See which items
        </button>
        <button type="submit" formAction="/labels/sheets">
          Make the sheets
        </button>
      </p>
    </form>
  );
}

interface ItemChoiceProps extends Pick<LabelsPage, 'kinds' | 'stores'> {
  readonly value: (name: string) => string;
  readonly problem: Problem | undefined;
}

function ItemChoice({ value, kinds, stores, problem }: ItemChoiceProps) {
  const error = problem?.more.errors?.find(({ field }) => field === 'tags')?.message;
  return (
    <>
      <div class="fields">
        <Choice
          label="Kind"
          name="kind"
          value={value('kind')}
          blank="every kind"
          options={kinds.map(({ kind, name }) => ({ value: kind, label: name }))}
          problem={problem}
        />
        <Choice
          label="Store"
          name="storeId"
          value={value('storeId')}
          blank="every store"
          options={stores.map(({ id, name }) => ({ value: String(id), label: name }))}
          problem={problem}
        />
      </div>
      <div class="field">
        <label for="tags">Or these tags</label>
        <p class="hint" id="tags-hint">
          One to a line. Where tags are named, kind and store count for nothing.
        </p>
        <textarea
          id="tags"
          name="tags"
          rows={3}
          aria-describedby="tags-hint"
          aria-invalid={error ? 'true' : undefined}
        >
          {value('tags')}
        </textarea>
        {error ? <p class="field-error">{error}</p> : null}
      </div>
    </>
  );
}

function Found({ chosen: { items, unknown, layout, start } }: { chosen: Chosen }) {
  if (items.length === 0 && unknown.length === 0) return null;
  const sheets = placeLabels(items, layout, start).length;
  return (
    <section>
      <h2>
        {count(items.length, 'label', 'labels')} on {count(sheets, 'sheet', 'sheets')}
      </h2>
      {unknown.length === 0 ? null : (
        <p class="note note-refused">No item in use carries {unknown.slice(0, 20).join(', ')}.</p>
      )}
      <p class="tags">
        {items.map(({ id, tag }) => (
          <a class="tag" key={id} href={`/register/${id}`}>
            {tag}
          </a>
        ))}
      </p>
    </section>
  );
}

function textOf(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
