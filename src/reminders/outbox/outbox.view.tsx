import type { Actor } from '../../people/actor.js';
import { Form } from '../../web/components/form.js';
import { Scroll } from '../../web/components/scroll.js';
import { StateMark } from '../../web/components/state-mark.js';
import { page } from '../../web/page.js';
import { count, instant } from '../../web/sentences/words.js';
import { FAULT_WORDS, MAIL_STATE_WORDS } from './mail-words.js';
import type { MailPileView, MailView, OutboxView } from './outbox.dto.js';

/** What was given up and has to be seen to, what waits, and what was sent lately. */
export function outboxPage({ me, box, demo }: { me: Actor; box: OutboxView; demo: boolean }): string {
  return page(
    { title: 'Outbox', actor: me, path: '/outbox' },
    <>
      <h1>Outbox</h1>
      <p class="lede">{summary(box)}</p>
      {demo ? <DemoNote /> : null}
      {box.open ? null : <NoServer />}
      <GivenUp me={me} pile={box.dead} />
      <Pile title="Waiting" pile={box.waiting} when="Next try" empty="Nothing waits." />
      <Pile title="Sent lately" pile={box.settled} when="When" empty="Nothing has been sent yet." />
    </>,
  );
}

/** The button that sends a mail again that was given up. */
export function Resend({ mail: { id, subject } }: { mail: MailView }) {
  return (
    <Form action={`/outbox/${id}/resend`} label={`Send again: ${subject}`}>
      <button type="submit">
        Send again<span class="visually-hidden">: {subject}</span>
      </button>
    </Form>
  );
}

/** Why the last try failed, in our words and the server's, and what to do. */
export function LastFault({ mail: { fault, lastAnswer } }: { mail: MailView }) {
  if (fault === null) return null;
  const { what, next } = FAULT_WORDS[fault];
  return (
    <>
      <p>{what}</p>
      {lastAnswer ? (
        <p>
          Its answer: <q class="address">{lastAnswer}</q>
        </p>
      ) : null}
      <p class="next">{next}</p>
    </>
  );
}

/** Whether a person may have mail sent again. */
export function mayResend(me: Actor, { state }: MailView): boolean {
  return state === 'dead' && me.roles.includes('manager');
}

function summary({ dead, waiting }: OutboxView): string {
  const waits = waiting.total === 0 ? 'Nothing waits' : `${count(waiting.total, 'mail waits', 'mails wait')}`;
  const given = dead.total === 0 ? 'nothing was given up' : `${count(dead.total, 'was', 'were')} given up`;
  return `${waits}, ${given}.`;
}

function DemoNote() {
  return (
    <p class="note">
      This is the demo: nothing leaves this machine. Mail arrives in the <a href="/mailbox">local mailbox</a>.
    </p>
  );
}

function NoServer() {
  return (
    <section class="note note-due">
      <h2 class="note-title">
        <StateMark state="due" word="No mail server is set, so nobody is told by mail" />
      </h2>
      <p>
        Whoever keeps this server sets these in its environment and starts it again: <code>SMTP_HOST</code>,
        the mail server; <code>SMTP_USER</code> and <code>SMTP_PASSWORD</code>, where it asks for a sign-in;{' '}
        <code>MAIL_FROM</code>, the address that mail comes from. <code>SMTP_TLS</code> and{' '}
        <code>SMTP_PORT</code> are needed only where the server does not speak STARTTLS on port 587. The
        README lists them all.
      </p>
    </section>
  );
}

function GivenUp({ me, pile }: { me: Actor; pile: MailPileView }) {
  if (pile.total === 0) return null;
  return (
    <section>
      <h2>Given up, {pile.total}</h2>
      <p>Whoever these were for was not told. Tell them yourself, and see to the cause.</p>
      <ul class="cards">
        {pile.mails.map((mail) => (
          <li class="card" key={mail.id}>
            <h3>
              <a href={`/outbox/${mail.id}`}>{mail.subject}</a>
            </h3>
            <p>
              <StateMark {...MAIL_STATE_WORDS.dead} />
              {mail.settledAt ? ` ${instant(mail.settledAt)}` : ''}, to {mail.toName}{' '}
              <span class="address">{mail.toAddress}</span>
            </p>
            <LastFault mail={mail} />
            {mayResend(me, mail) ? <Resend mail={mail} /> : null}
          </li>
        ))}
      </ul>
      <More pile={pile} />
    </section>
  );
}

function Pile({
  title,
  pile,
  when,
  empty,
}: {
  title: string;
  pile: MailPileView;
  when: string;
  empty: string;
}) {
  return (
    <section>
      <h2>{title}</h2>
      {pile.total === 0 ? (
        <p>{empty}</p>
      ) : (
        <Scroll label={title}>
          <table class="stacked">
            <caption class="visually-hidden">{title}</caption>
            <thead>
              <tr>
                <th scope="col">Mail</th>
                <th scope="col">To</th>
                <th scope="col">State</th>
                <th scope="col">{when}</th>
              </tr>
            </thead>
            <tbody>
              {pile.mails.map((mail) => (
                <Row key={mail.id} mail={mail} />
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      <More pile={pile} />
    </section>
  );
}

function Row({ mail }: { mail: MailView }) {
  const { id, subject, toName, toAddress, state, tries, fault, nextTryAt, settledAt } = mail;
  return (
    <tr>
      <th scope="row">
        <a href={`/outbox/${id}`}>{subject}</a>
      </th>
      <td data-label="To" class="whole">
        {toName} <span class="faded address">{toAddress}</span>
      </td>
      <td data-label="State">
        <StateMark {...MAIL_STATE_WORDS[state]} />
        {fault && state === 'waiting' ? (
          <span class="faded"> {`tried ${count(tries, 'time', 'times')}. ${FAULT_WORDS[fault].what}`}</span>
        ) : null}
      </td>
      <td data-label={state === 'waiting' ? 'Next try' : 'When'}>
        {instant(nextTryAt ?? settledAt ?? mail.decidedAt)}
      </td>
    </tr>
  );
}

function More({ pile: { total, mails } }: { pile: MailPileView }) {
  if (total <= mails.length) return null;
  return (
    <p class="faded">
      The {mails.length} first of {total}.
    </p>
  );
}
