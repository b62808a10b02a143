import type { ComponentChildren } from 'preact';
import type { Actor } from '../../people/actor.js';
import { StateMark } from '../../web/components/state-mark.js';
import { page } from '../../web/page.js';
import { count, instant } from '../../web/sentences/words.js';
import type { WholeMail } from './kept-mail.service.js';
import { MAIL_STATE_WORDS } from './mail-words.js';
import { LastFault, mayResend, Resend } from './outbox.view.js';

interface MailPage {
  readonly me: Actor;
  readonly mail: WholeMail;
  /** The page of the list that it was opened from. */
  readonly from: 'outbox' | 'mailbox';
  /** The address of Tackleroom as mails write it. */
  readonly address: string;
}

/** One mail, as plain text and as HTML. */
export function mailPage({ me, mail, from, address }: MailPage): string {
  const path = `/${from}/${mail.id}`;
  return page(
    { title: mail.subject, actor: me, path },
    <>
      <p class="crumbs">
        <a href={`/${from}`}>{from === 'outbox' ? 'Outbox' : 'Local mailbox'}</a>
      </p>
      <h1>{mail.subject}</h1>
      <section class="sheet">
        <dl class="pairs">
          <Pair term="To">
            {mail.toName} <span class="address">{mail.toAddress}</span>
          </Pair>
          <Pair term="Decided">{instant(mail.decidedAt)}</Pair>
          <Pair term="State">
            <StateMark {...MAIL_STATE_WORDS[mail.state]} /> {whenOf(mail)}
          </Pair>
          <Pair term="Message-ID">
            <code class="address">{mail.messageId}</code>
          </Pair>
        </dl>
        <LastFault mail={mail} />
        {from === 'outbox' && mayResend(me, mail) ? <Resend mail={mail} /> : null}
      </section>
      {mail.html === '' ? (
        <p class="note">What mail said is kept for 90 days after it was sent.</p>
      ) : (
        <Texts mail={mail} path={path} address={address} />
      )}
    </>,
  );
}

function Texts({ mail, path, address }: { mail: WholeMail; path: string; address: string }) {
  return (
    <>
      <section>
        <h2>HTML</h2>
        <iframe
          class="mail-frame"
          src={`${path}/html`}
          sandbox=""
          title={`The mail as HTML: ${mail.subject}`}
        />
        <p class="faded">Links are only shown here. They work in the plain text.</p>
      </section>
      <section>
        <h2>Plain text</h2>
        <pre class="mail-text">
          <Linked text={mail.plainText} address={address} />
        </pre>
      </section>
    </>
  );
}

function Pair({ term, children }: { term: string; children: ComponentChildren }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function whenOf({ state, settledAt, nextTryAt, tries }: WholeMail): string {
  if (state !== 'waiting') return settledAt ? instant(settledAt) : '';
  const tried = tries === 0 ? '' : `tried ${count(tries, 'time', 'times')}, `;
  return `${tried}next try ${nextTryAt ? instant(nextTryAt) : 'soon'}`;
}

/** Text in which the addresses of Tackleroom itself, and no others, are links. */
function Linked({ text, address }: { text: string; address: string }) {
  const parts = text.split(/(https?:\/\/[^\s<>"]+[\w/])/);
  return (
    <>
      {parts.map((part, index) =>
        index % 2 === 1 && (part === address || part.startsWith(`${address}/`)) ? (
          <a href={part.slice(address.length) || '/'} key={index}>
            {part}
          </a>
        ) : (
          part
        ),
      )}
    </>
  );
}
