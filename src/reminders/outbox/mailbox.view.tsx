import type { Actor } from '../../people/actor.js';
import { page } from '../../web/page.js';
import { instant } from '../../web/sentences/words.js';
import type { MailPileView } from './outbox.dto.js';

/** The inbox of the demo: a person's mails, or everyone's for a manager. */
export function mailboxPage({
  me,
  pile,
  everyone,
}: {
  me: Actor;
  pile: MailPileView;
  everyone: boolean;
}): string {
  return page(
    { title: 'Local mailbox', actor: me, path: '/mailbox' },
    <>
      <h1>Local mailbox</h1>
      <p class="note">
        This is the demo: nothing leaves this machine. Here is what {everyone ? 'everyone' : 'you'} would have
        got by mail.
      </p>
      {pile.total === 0 ? <p>No mail has arrived yet. It is looked for every few seconds.</p> : null}
      <ul class="cards">
        {pile.mails.map(({ id, subject, toName, toAddress, decidedAt }) => (
          <li class="card" key={id}>
            <h2>
              <a href={`/mailbox/${id}`}>{subject}</a>
            </h2>
            <p>
              To {toName} <span class="faded address">{toAddress}</span>
            </p>
            <p class="faded">{instant(decidedAt)}</p>
          </li>
        ))}
      </ul>
    </>,
  );
}
