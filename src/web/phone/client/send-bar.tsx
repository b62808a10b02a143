import { conflictWords } from './conflict-words.js';
import { counted } from './counted.js';
import type { Phone, Snapshot } from './phone.js';
import { whenOf } from './time.js';

/** What still waits, always in sight, and what to do about it. */
export function SendBar({ phone, send }: { phone: Phone; send: () => Promise<void> }) {
  const { snapshot } = phone;
  const { isSending, halt } = snapshot;
  return (
    <>
      <section class="send-bar" aria-label="Sending">
        <p role="status">
          <a href="#/waiting">
            {waitingWords(snapshot)}
            {needsLook(snapshot) > 0 ? (
              <strong class="needs-look">{needsLook(snapshot)} to look at</strong>
            ) : null}
          </a>
        </p>
        {phone.hasWaiting ? (
          <button type="button" class="quiet" disabled={isSending} onClick={() => void send()}>
            {isSending ? 'Sending …' : 'Send now'}
          </button>
        ) : null}
      </section>
      {halt ? <HaltNote snapshot={snapshot} /> : null}
    </>
  );
}

function HaltNote({ snapshot: { halt, me } }: { snapshot: Snapshot }) {
  if (halt?.kind === 'signInFirst')
    return (
      <p class="halt">
        You are signed out. Everything is kept on this phone.{' '}
        <a href="/sign-in?then=/phone">Sign in to send it</a>
      </p>
    );
  if (halt?.kind === 'otherPerson')
    return (
      <p class="halt">
        Saved by {halt.names.join(' and ')}, and goes out under that name only. You are {me?.name}: let{' '}
        {halt.names.join(' or ')} <a href="/sign-in?then=/phone">sign in</a> on this phone.
      </p>
    );
  return <p class="halt">{halt?.words} What waits is kept on this phone and goes out by itself later.</p>;
}

function waitingWords({ checks, photos, lastSentAt }: Snapshot): string {
  const [checksWait, photosWait] = [checks, photos].map(
    (saved) => saved.filter(({ sending }) => sending === 'waiting').length,
  ) as [number, number];
  const parts = [
    ...(checksWait > 0 ? [counted(checksWait, 'check')] : []),
    ...(photosWait > 0 ? [counted(photosWait, 'photo')] : []),
  ];
  if (parts.length > 0)
    return `${parts.join(' and ')} ${checksWait + photosWait === 1 ? 'waits' : 'wait'} to be sent`;
  const isRefused = [...checks, ...photos].some(({ sending }) => sending === 'needsLook');
  return lastSentAt
    ? `${isRefused ? 'The rest' : 'All'} sent at ${whenOf(lastSentAt)}`
    : 'Nothing waits to be sent';
}

/** How many entries someone has to look at: refused by the server, or overtaken by what happened meanwhile. */
function needsLook({ checks, photos }: Snapshot): number {
  return [...checks, ...photos].filter(
    (saved) =>
      saved.sending === 'needsLook' || ('receipt' in saved && saved.receipt && conflictWords(saved.receipt)),
  ).length;
}
