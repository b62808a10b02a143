import type { SchemeDefinition } from '../rules/due/scheme.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { Choice, Field, Form } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { StateMark, type StateKind } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { count } from '../web/sentences/words.js';
import type { Rail } from './board.service.js';
import type { StoreView } from './stores.dto.js';
import { LEAD_DAYS } from './tally.js';

interface StoresPage {
  readonly me: Actor;
  readonly stores: readonly StoreView[];
  readonly schemes: readonly SchemeDefinition[];
  readonly form?: Readonly<Record<string, unknown>>;
  readonly problem?: Problem;
}

/** Every store, and for a manager the form for a new one. */
export function storesPage({ me, stores, schemes, form = {}, problem }: StoresPage): string {
  return page(
    { title: 'Stores', actor: me, path: '/stores' },
    <>
      <h1>Stores</h1>
      {stores.length === 0 ? (
        <p class="lede">There is no store yet. Gear is kept in a store, so open one first.</p>
      ) : (
        <ul class="cards">
          {stores.map((store) => (
            <li class="card" key={store.id}>
              <h2>
                <a href={`/stores/${store.id}`}>{store.name}</a>
              </h2>
              <p>{store.address}</p>
              <p class="faded">
                Inspection rules of {schemeName(schemes, store.scheme)}; time of {store.timeZone}.
              </p>
              {keepsStores(me) ? (
                <p>
                  <a href={`/stores/${store.id}/reminders`}>Reminders at {store.name}</a>
                </p>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      {me.roles.includes('manager') ? (
        <section class="sheet">
          <h2>Open a store</h2>
          <ProblemNote problem={problem} />
          <Form action="/stores">
            <StoreFields values={form} schemes={schemes} problem={problem} />
            <button type="submit">Open the store</button>
          </Form>
        </section>
      ) : null}
    </>,
  );
}

/** One store as its tally board. */
export function boardPage({
  me,
  store,
  rails,
  schemes,
  form,
  problem,
}: Omit<StoresPage, 'stores'> & { store: StoreView; rails: readonly Rail[] }): string {
  const pegs = rails.flatMap((rail) => rail.pegs);
  return page(
    { title: store.name, actor: me, path: `/stores/${store.id}` },
    <>
      <p class="crumbs">
        <a href="/stores">Stores</a>
      </p>
      <h1>{store.name}</h1>
      <p class="lede">
        {store.address}. Inspection rules of {schemeName(schemes, store.scheme)}.{' '}
        <a href={`/quarantine#store-${store.id}`}>Its quarantine place</a>
        {keepsStores(me) ? (
          <>
            {' · '}
            <a href={`/stores/${store.id}/reminders`}>When it is reminded</a>
          </>
        ) : null}
      </p>
      {pegs.length === 0 ? (
        <div class="note">
          <p class="note-title">The board is empty.</p>
          <p>
            <a href="/register/import">Import the register</a> or <a href="/register/new">add an item</a>.
          </p>
        </div>
      ) : (
        <>
          <p class="legend">
            {LEGEND.map(({ state, word }) => {
              const number = pegs.filter((peg) => peg.state === state).length;
              return <StateMark key={state} state={state} word={`${word}: ${number}`} />;
            })}
          </p>
          <div class="board">
            {rails.map((rail) => (
              <Rails key={rail.kind} rail={rail} storeId={store.id} />
            ))}
          </div>
        </>
      )}
      {me.roles.includes('manager') ? (
        <details open={problem !== undefined}>
          <summary>Change this store</summary>
          <ProblemNote problem={problem} />
          <Form action={`/stores/${store.id}`}>
            <input type="hidden" name="version" value={String(store.version)} />
            <StoreFields values={form ?? { ...store }} schemes={schemes} problem={problem} />
            <button type="submit">Save</button>
          </Form>
        </details>
      ) : null}
    </>,
  );
}

const LEGEND: readonly { state: StateKind; word: string }[] = [
  { state: 'ok', word: 'on its peg' },
  { state: 'due', word: `due within ${LEAD_DAYS} days` },
  { state: 'away', word: 'away' },
  { state: 'refused', word: 'not to be used' },
];

function Rails({ rail, storeId }: { rail: Rail; storeId: number }) {
  const more = rail.total - rail.pegs.length;
  return (
    <section>
      <h2>
        {rail.name}, {rail.total}
      </h2>
      <ul class="pegs">
        {rail.pegs.map((peg) => (
          <li class={`peg peg-${peg.state}`} key={peg.itemId}>
            <a href={`/register/${peg.itemId}`}>
              <span class="tally">{peg.tag}</span>
              <span class="peg-word">{peg.word}</span>
            </a>
          </li>
        ))}
      </ul>
      {more > 0 ? (
        <p>
          <a href={`/register?kind=${rail.kind}&storeId=${storeId}`}>
            And {count(more, 'more', 'more')} in the register
          </a>
        </p>
      ) : null}
    </section>
  );
}

function StoreFields({
  values,
  schemes,
  problem,
}: {
  values: Readonly<Record<string, unknown>>;
  schemes: readonly SchemeDefinition[];
  problem: Problem | undefined;
}) {
  const value = (name: string) => (typeof values[name] === 'string' ? values[name] : '');
  return (
    <div class="fields">
      <Field label="Name" name="name" value={value('name')} required problem={problem} />
      <Field label="Address" name="address" value={value('address')} required problem={problem} />
      <Choice
        label="Inspection rules of"
        name="scheme"
        value={value('scheme')}
        options={schemes.map(({ scheme, name }) => ({ value: scheme, label: name }))}
        problem={problem}
      />
      <Field
        label="Time zone"
        name="timeZone"
        value={value('timeZone')}
        hint="As the IANA database writes it, such as Europe/London."
        required
        problem={problem}
      />
    </div>
  );
}

/** Whether this person says when a store works and how early it hears of what falls due. */
function keepsStores({ roles }: Actor): boolean {
  return roles.includes('storeman') || roles.includes('manager');
}

function schemeName(schemes: readonly SchemeDefinition[], key: string): string {
  return schemes.find(({ scheme }) => scheme === key)?.name ?? key;
}
