import { Scroll } from '../web/components/scroll.js';
import type { Actor } from '../people/actor.js';
import { CONDITIONS } from '../rules/gear/gear.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { StoreView } from '../stores/stores.dto.js';
import { Choice, Field } from '../web/components/form.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { day } from '../web/sentences/words.js';
import { CONDITION_WORDS, CURRENCY_WORDS, custodyWord, markingText } from './item-words.js';
import { CURRENCIES, type FindItemsDto, type ItemPageView } from './register-search.dto.js';
import type { ItemRowView } from './register.dto.js';

interface RegisterPage {
  readonly me: Actor;
  readonly query: FindItemsDto;
  readonly found: ItemPageView;
  readonly kinds: readonly KindDefinition[];
  readonly stores: readonly StoreView[];
}

/** The register: a search and what it found, a page at a time. */
export function registerPage({ me, query, found, kinds, stores }: RegisterPage): string {
  const mayEnter = me.roles.includes('storeman') || me.roles.includes('manager');
  return page(
    { title: 'Register', actor: me, path: '/register' },
    <>
      <h1>Register</h1>
      <SearchForm query={query} kinds={kinds} stores={stores} />
      <p class="actions">
        {mayEnter ? (
          <>
            <a class="button" href="/register/new">
              Enter an item
            </a>
            <a class="button quiet" href="/register/import">
              Import a list
            </a>
            <a class="button quiet" href="/labels">
              Print labels
            </a>
          </>
        ) : null}
        <a class="button quiet" href="/register/export">
          Export the register
        </a>
      </p>
      <Found query={query} found={found} kinds={kinds} />
    </>,
  );
}

function SearchForm({ query, kinds, stores }: Pick<RegisterPage, 'query' | 'kinds' | 'stores'>) {
  return (
    <form method="get" action="/register" role="search" class="sheet" aria-label="Find in the register">
      <Field
        label="Tag, serial number or maker"
        name="text"
        value={query.text}
        hint="The beginning is enough."
      />
      <details
        open={[query.kind, query.storeId, query.condition, query.currency, query.batch].some(
          (filter) => filter !== undefined,
        )}
      >
        <summary>Narrow it down</summary>
        <div class="fields">
          <Choice
            label="Kind"
            name="kind"
            value={query.kind}
            blank="every kind"
            options={kinds.map(({ kind, name }) => ({ value: kind, label: name }))}
          />
          <Choice
            label="Store"
            name="storeId"
            value={String(query.storeId ?? '')}
            blank="every store"
            options={stores.map(({ id, name }) => ({ value: String(id), label: name }))}
          />
          <Choice
            label="Condition"
            name="condition"
            value={query.condition}
            blank="any condition"
            options={CONDITIONS.map((value) => ({ value, label: CONDITION_WORDS[value].word }))}
          />
          <Choice
            label="Dates"
            name="currency"
            value={query.currency}
            blank="any dates"
            options={CURRENCIES.map((value) => ({ value, label: CURRENCY_WORDS[value].word }))}
          />
          <Field label="Batch" name="batch" value={query.batch} hint="The maker's batch or lot, whole." />
        </div>
      </details>
      <button type="submit">Find</button>
    </form>
  );
}

function Found({ query, found, kinds }: Pick<RegisterPage, 'query' | 'found' | 'kinds'>) {
  const { items, next } = found;
  const kindName = (key: string) => kinds.find(({ kind }) => kind === key)?.name ?? key;
  return (
    <>
      {items.length === 0 ? (
        <p class="note">
          {next
            ? 'Nothing among the items looked at so far. Look further.'
            : 'Nothing in the register fits that.'}
        </p>
      ) : (
        <Scroll label="Items found">
          <table class="stacked">
            <caption>Items in the order of their tags</caption>
            <thead>
              <tr>
                {['Tag', 'Kind', 'Dates', 'Condition', 'Where', 'Rating', 'Store'].map((title) => (
                  <th scope="col" key={title}>
                    {title}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {items.map((item) => (
                <ItemLine key={item.id} item={item} kindName={kindName(item.kind)} />
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {next ? (
        <p class="actions">
          <a class="button quiet" rel="next" href={addressOf(query, next)}>
            {items.length === 0 ? 'Look further' : 'Next page'}
          </a>
        </p>
      ) : null}
    </>
  );
}

function ItemLine({ item, kindName }: { item: ItemRowView; kindName: string }) {
  return (
    <tr>
      <th scope="row" data-label="Tag">
        <a class="tag" href={`/register/${item.id}`}>
          {item.tag}
        </a>
      </th>
      <td data-label="Kind">{kindName}</td>
      <td data-label="Dates">
        <StateMark {...CURRENCY_WORDS[item.currency]} />
        {item.dueOn === undefined ? null : <span class="faded"> {day(item.dueOn)}</span>}
      </td>
      <td data-label="Condition">
        <StateMark {...CONDITION_WORDS[item.condition]} />
      </td>
      <td data-label="Where">
        <StateMark {...custodyWord(item.custody)} />
      </td>
      <td data-label="Rating">{item.markings.map(markingText).join(', ') || '–'}</td>
      <td data-label="Store">{item.storeName}</td>
    </tr>
  );
}

function addressOf(query: FindItemsDto, after: string): string {
  const fields = Object.entries({ ...query, after }).filter(([, value]) => value !== undefined);
  return `/register?${new URLSearchParams(fields.map(([name, value]) => [name, String(value)])).toString()}`;
}
