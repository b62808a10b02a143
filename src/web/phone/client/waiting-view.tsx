import { StateMark } from '../../components/state-mark.js';
import type { ViewProps } from './view-props.js';
import { conflictWords } from './conflict-words.js';
import { Crumbs } from './crumbs.js';
import type { SavedCheck, SavedPhoto } from './store.js';
import { whenOf } from './time.js';

/** Everything that was saved on this phone: what waits, what needs a look, what the server has. */
export function WaitingView({ phone }: ViewProps) {
  const { checks, photos, me } = phone.snapshot;
  const waiting = [...checks, ...photos].filter(({ sending }) => sending === 'waiting');
  const refused = [...checks, ...photos].filter(({ sending }) => sending === 'needsLook');
  const sent = checks.filter(({ sending }) => sending === 'sent').reverse();
  return (
    <>
      <Crumbs href="#/" words="Jobs" me={me} />
      <h1 tabIndex={-1}>Saved on this phone</h1>
      {me ? (
        <p>
          Checks are saved under the name of {me.name}. Someone else signs in first, while there is a signal:{' '}
          <a href="/sign-in?then=/phone">sign in</a>.
        </p>
      ) : null}
      <section>
        <h2>Waits to be sent ({waiting.length})</h2>
        {waiting.length === 0 ? <p>Nothing. The server has everything that was saved here.</p> : null}
        <ol class="entries">
          {waiting.map((saved) => (
            <li key={saved.key}>
              <Entry saved={saved} />
            </li>
          ))}
        </ol>
      </section>
      {refused.length > 0 ? (
        <section>
          <h2>The server refused these ({refused.length})</h2>
          <p>They are kept here. Show them to the storeman, or try again when the reason is gone.</p>
          <ul class="entries">
            {refused.map((saved) => (
              <li key={saved.key}>
                <Entry saved={saved} />
                <p class="note note-refused">{saved.refusal}</p>
              </li>
            ))}
          </ul>
          <button type="button" onClick={() => void phone.tryAgain()}>
            Try again
          </button>
        </section>
      ) : null}
      {sent.length > 0 ? <Sent checks={sent} /> : null}
    </>
  );
}

function Sent({ checks }: { checks: readonly SavedCheck[] }) {
  return (
    <section>
      <h2>The server has ({checks.length})</h2>
      <ul class="entries">
        {checks.map((check) => (
          <li key={check.key}>
            <Entry saved={check} />
            {lookAt(check) ? (
              <p class="note note-due">
                <strong>Needs a look.</strong> {lookAt(check)}
              </p>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

function lookAt({ receipt }: SavedCheck): string | undefined {
  return receipt && conflictWords(receipt);
}

function Entry({ saved }: { saved: SavedCheck | SavedPhoto }) {
  return (
    <p>
      <span class="tag">{saved.tag}</span>{' '}
      {'body' in saved ? (
        <>
          <StateMark
            state={saved.outcome === 'fit' ? 'ok' : 'refused'}
            word={saved.outcome === 'fit' ? 'passed' : 'failed'}
          />{' '}
          at {whenOf(saved.body.checkedAt)}
        </>
      ) : (
        <>photo, {Math.ceil(saved.image.size / 1000)} kB</>
      )}
      , by {saved.madeBy.name}
      {'sentAt' in saved && saved.sentAt ? `, sent at ${whenOf(saved.sentAt)}` : ''}
    </p>
  );
}
