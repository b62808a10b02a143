import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { batchAddress, CONDITION_WORDS, CURRENCY_WORDS, custodyWord } from '../register/item-words.js';
import type { ItemRowView } from '../register/register.dto.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { Field, Form } from '../web/components/form.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { Scroll } from '../web/components/scroll.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { count } from '../web/sentences/words.js';
import type { BatchView } from './batches.dto.js';

interface BatchPage {
  readonly me: Actor;
  readonly found: BatchView;
  readonly kinds: readonly KindDefinition[];
  readonly form: Readonly<Record<string, unknown>> | undefined;
  readonly problem: Problem | undefined;
}

/** All items of a maker's batch, and the one action that takes them out of service together. */
export function batchPage({ me, found, kinds, form = {}, problem }: BatchPage): string {
  const { batch, maker, makers, items } = found;
  const inService = items.filter(({ condition }) => condition === 'inService').length;
  const acts = me.roles.some((role) => role !== 'crew');
  return page(
    { title: `Batch ${batch}`, actor: me, path: '/trace/batches' },
    <>
      <p class="crumbs">
        <a href="/register">Register</a>
      </p>
      <h1>
        Batch <span class="tag">{batch}</span>
        {maker === null ? '' : ` of ${maker}`}
      </h1>
      <ProblemNote problem={problem} />
      {maker === null ? (
        <ChooseMaker batch={batch} makers={makers} />
      ) : (
        <>
          <p class="lede">
            {count(items.length, 'item', 'items')} in the register, {inService} of them in service.
          </p>
          <BatchTable items={items} kinds={kinds} />
          {acts && inService > 0 ? (
            <section class="sheet narrow">
              <h2>Quarantine all of this batch</h2>
              <p>
                Takes {count(inService, 'item', 'items')} out of service at once and flags every job that
                counts on one. A competent person other than you has to examine and release each of them. What
                is scrapped stays scrapped.
              </p>
              <Form action={`/trace/batches/${encodeURIComponent(batch)}`} label="Quarantine the batch">
                <input type="hidden" name="maker" value={maker} />
                <Field
                  label="Why"
                  name="reason"
                  value={typeof form['reason'] === 'string' ? form['reason'] : ''}
                  hint="Such as the maker's notice with its number and day."
                  required
                  problem={problem}
                />
                <button type="submit" class="danger">
                  Quarantine {count(inService, 'item', 'items')}
                </button>
              </Form>
            </section>
          ) : null}
        </>
      )}
    </>,
  );
}

function ChooseMaker({ batch, makers }: { batch: string; makers: readonly string[] }) {
  return (
    <section class="sheet">
      <p>Several makers have a batch of that name. Whose is it?</p>
      <ul>
        {makers.map((maker) => (
          <li key={maker}>
            <a href={batchAddress(batch, maker)}>{maker}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function BatchTable({ items, kinds }: { items: readonly ItemRowView[]; kinds: readonly KindDefinition[] }) {
  return (
    <Scroll label="Items of the batch">
      <table class="stacked">
        <caption>Items of the batch, in the order of their tags</caption>
        <thead>
          <tr>
            {['Tag', 'Kind', 'Serial number', 'Condition', 'Where', 'Dates', 'Store'].map((title) => (
              <th scope="col" key={title}>
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <tr key={item.id}>
              <th scope="row" data-label="Tag">
                <a class="tag" href={`/register/${item.id}`}>
                  {item.tag}
                </a>
              </th>
              <td data-label="Kind">{kinds.find(({ kind }) => kind === item.kind)?.name ?? item.kind}</td>
              <td data-label="Serial number">{item.serial ?? 'not known'}</td>
              <td data-label="Condition">
                <StateMark {...CONDITION_WORDS[item.condition]} />
              </td>
              <td data-label="Where">
                <StateMark {...custodyWord(item.custody)} />
              </td>
              <td data-label="Dates">
                <StateMark {...CURRENCY_WORDS[item.currency]} />
              </td>
              <td data-label="Store">{item.storeName}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
