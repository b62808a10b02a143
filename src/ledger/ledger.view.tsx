import { Scroll } from '../web/components/scroll.js';
import type { Actor } from '../people/actor.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import type { LedgerCheckView } from './ledger.dto.js';
import type { ChainEntry } from './chain.js';

/** The newest entries of the history, and, where it was checked, whether the whole of it holds. */
export function ledgerPage({
  me,
  entries,
  check,
}: {
  me: Actor;
  entries: readonly ChainEntry[];
  check?: LedgerCheckView;
}): string {
  return page(
    { title: 'Ledger', actor: me, path: '/ledger' },
    <>
      <h1>Ledger</h1>
      <p class="lede">
        Everything that was ever changed here, by whom. Entries are only added: each carries the fingerprint
        of the one before.
      </p>
      {check ? (
        <Check check={check} />
      ) : (
        <p class="actions">
          <a class="button quiet" href="/ledger/check">
            Check every entry
          </a>
        </p>
      )}
      <Entries entries={entries} />
    </>,
  );
}

function Check({ check }: { check: LedgerCheckView }) {
  return (
    <div class={`note ${check.whole ? 'note-ok' : 'note-refused'}`}>
      <p class="note-title">
        <StateMark
          state={check.whole ? 'ok' : 'refused'}
          word={
            check.whole
              ? `All ${check.entries} entries hold`
              : `Entry ${check.fault?.number} is wrong: ${check.fault?.fault}`
          }
        />
      </p>
      <p>
        Newest fingerprint: <code class="fingerprint">{check.head}</code>.
        {check.whole ? '' : ' Keep a copy of the database as it is and call whoever looks after the server.'}
      </p>
    </div>
  );
}

function Entries({ entries }: { entries: readonly ChainEntry[] }) {
  return (
    <Scroll label="Newest entries">
      <table class="stacked">
        <caption>The newest {entries.length} entries</caption>
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">When (UTC)</th>
            <th scope="col">Who</th>
            <th scope="col">What</th>
            <th scope="col">On</th>
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => (
            <tr key={entry.number}>
              <td data-label="No.">{entry.number}</td>
              <td data-label="When (UTC)">{entry.at.slice(0, 16).replace('T', ' ')}</td>
              <td data-label="Who">{entry.actorName}</td>
              <td data-label="What">{entry.action.replace('.', ' ')}</td>
              <td data-label="On">
                <Subject entry={entry} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

const PLACES: Readonly<Record<string, string>> = { item: '/register', job: '/jobs', store: '/stores' };

function Subject({ entry: { subjectKind, subjectId } }: { entry: ChainEntry }) {
  const place = PLACES[subjectKind];
  const words = `${subjectKind} ${subjectId}`;
  return place ? <a href={`${place}/${subjectId}`}>{words}</a> : <>{words}</>;
}
