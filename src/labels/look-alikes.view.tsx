import type { Actor } from '../people/actor.js';
import type { TagAnswer } from '../register/plate-facts.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { page } from '../web/page.js';

interface LookAlikesPage {
  readonly me: Actor;
  readonly tag: string;
  readonly lookAlikes: TagAnswer['lookAlikes'];
  readonly kinds: readonly KindDefinition[];
}

/** A tag that nobody carries, and whose tags look like it. */
export function lookAlikesPage({ me, tag, lookAlikes, kinds }: LookAlikesPage): string {
  return page(
    { title: `No item carries ${tag}`, actor: me, path: '/register' },
    <>
      <p class="crumbs">
        <a href="/register">Register</a>
      </p>
      <h1>
        No item carries <span class="tag">{tag}</span>
      </h1>
      <p class="lede">
        {lookAlikes.length === 1 ? 'This tag is' : 'These tags are'} easily misread for it. Compare with the
        item in your hand, sign by sign, before you open one.
      </p>
      <ul class="cards">
        {lookAlikes.map((item) => (
          <li class="card" key={item.id}>
            <h2>
              <a class="tag" href={`/register/${item.id}`}>
                {item.tag}
              </a>
            </h2>
            <p class="faded">{kinds.find(({ kind }) => kind === item.kind)?.name ?? item.kind}</p>
          </li>
        ))}
      </ul>
    </>,
  );
}
