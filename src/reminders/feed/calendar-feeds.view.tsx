import type { Actor } from '../../people/actor.js';
import type { Problem } from '../../problem.js';
import type { StoreView } from '../../stores/stores.dto.js';
import { Choice, Form } from '../../web/components/form.js';
import { ProblemNote } from '../../web/components/problem-note.js';
import { Scroll } from '../../web/components/scroll.js';
import { page } from '../../web/page.js';
import { day } from '../../web/sentences/words.js';
import { leadsToItself } from '../public-address.js';
import type { CalendarFeedView } from './calendar-feeds.dto.js';

/** The open feeds, the form for a new one, and the address of one that was just made. */
export function calendarFeedsPage({
  me,
  feeds,
  stores,
  address,
  problem,
}: {
  me: Actor;
  feeds: readonly CalendarFeedView[];
  stores: readonly StoreView[];
  address?: string;
  problem?: Problem;
}): string {
  return page(
    { title: 'Calendar feeds', actor: me, path: '/calendar' },
    <>
      <p class="crumbs">
        <a href="/diary">Due diary</a>
      </p>
      <h1>Calendar feeds</h1>
      <p class="lede">
        A calendar feed shows what falls due in the calendar that you look at anyway, on a phone or a desk. It
        keeps itself up to date.
      </p>
      <ProblemNote problem={problem} />
      {address === undefined ? null : <NewAddress address={address} />}
      <div class="two-columns">
        <section class="sheet">
          <h2>A new feed</h2>
          <Form action="/calendar" label="Make a calendar feed">
            <Choice
              label="What it shows"
              name="storeId"
              blank="What I am told"
              hint="What you are told: what falls due at the stores chosen for your mail."
              options={stores.map(({ id, name }) => ({ value: String(id), label: name }))}
              problem={problem}
            />
            <button type="submit">Make the feed</button>
          </Form>
        </section>
        <section class="sheet">
          <h2>Who can read it</h2>
          <p>
            Calendar programs cannot sign in, so the address itself is the key: whoever has it can read what
            falls due, with tags and job numbers, and nothing else.
          </p>
          <p>
            It stops at once when it is revoked, when its owner's account is closed, or when its owner is left
            with the role of crew only.
          </p>
        </section>
      </div>
      <Feeds me={me} feeds={feeds} />
    </>,
  );
}

function NewAddress({ address }: { address: string }) {
  return (
    <section class="note note-due">
      <p class="note-title">Copy this address now. It is shown this once.</p>
      <div class="field">
        <label for="address">Address of the new feed</label>
        <input id="address" type="text" value={address} readonly aria-describedby="address-warning" />
      </div>
      <p>
        Put it where your calendar program asks for a calendar to subscribe to, by its address. A program that
        does not take it may take it with <code>webcal://</code> in place of{' '}
        <code>{new URL(address).protocol}//</code>:{' '}
        <a href={address.replace(/^https?:/, 'webcal:')}>open it in the calendar of this device</a>.
      </p>
      {leadsToItself(address) ? (
        <p>
          <strong>Only this computer reaches that address.</strong> For a calendar on a phone or on the web,
          start Tackleroom with <code>PUBLIC_URL</code> set to the address that people open, and make the feed
          after that.
        </p>
      ) : null}
      <p id="address-warning">
        Whoever has this address can read the feed. Keep it like a key: if it got about, revoke the feed and
        make another.
      </p>
    </section>
  );
}

function Feeds({ me, feeds }: { me: Actor; feeds: readonly CalendarFeedView[] }) {
  const everyones = me.roles.includes('manager');
  if (feeds.length === 0) return <p>{everyones ? 'Nobody has a feed yet.' : 'You have no feed yet.'}</p>;
  return (
    <Scroll label="Calendar feeds">
      <table class="stacked">
        <caption>{everyones ? 'Every open feed' : 'Your open feeds'}</caption>
        <thead>
          <tr>
            <th scope="col">Feed</th>
            <th scope="col">Whose</th>
            <th scope="col">Made on</th>
            <th scope="col">Revoke</th>
          </tr>
        </thead>
        <tbody>
          {feeds.map((feed) => (
            <Row key={feed.id} me={me} feed={feed} />
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Row({ me, feed }: { me: Actor; feed: CalendarFeedView }) {
  const { id, personId, personName, storeName, createdAt } = feed;
  const isOwn = personId === me.id;
  const what = storeName ?? (isOwn ? 'What I am told' : `What ${personName} is told`);
  return (
    <tr>
      <th scope="row">
        {what} <span class="faded">no. {id}</span>
      </th>
      <td data-label="Whose">{isOwn ? 'yours' : personName}</td>
      <td data-label="Made on">{day(createdAt.slice(0, 10))}</td>
      <td data-label="Revoke">
        <Form action={`/calendar/${id}/revoke`} label={`Revoke feed ${id}`}>
          <button type="submit" class="quiet">
            Revoke feed {id}
          </button>
        </Form>
      </td>
    </tr>
  );
}
