import type { MailFault } from './mail.entity.js';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/** How long mail is tried before it is given up: long enough for a weekend. */
const TRIED_FOR_MS = 72 * HOUR_MS;

/** How long to wait after each try that the server saw. RFC 5321, 4.5.4.1, asks for at least half an hour on the whole, sooner at first. */
const PAUSES_MIN = [1, 5, 15, 60];
const LATER_PAUSE_MIN = 240;

/** No mail waits longer than this for its next try. */
export const LONGEST_PAUSE_MS = LATER_PAUSE_MIN * MINUTE_MS;

/** How long to wait while the server cannot be used at all: trying costs it nothing, and what waits may be urgent. */
const SERVER_PAUSES_MIN = [1];
const LATER_SERVER_PAUSE_MIN = 5;

/** What is wrong with the mail server or our settings of it, before any mail was handed over. No mail is to blame. */
const SERVER_FAULTS: readonly MailFault[] = ['signInRefused', 'notPrivate', 'noAnswer', 'senderRefused'];

/** What another try would not change. */
const FINAL_FAULTS: readonly MailFault[] = ['addressRefused', 'mailRefused', 'nobodyThere'];

/** Whether the server as a whole cannot be used, so that the next mail would fail too. */
export function isServerFault(fault: MailFault): boolean {
  return SERVER_FAULTS.includes(fault) || fault === 'lineLost';
}

/** When mail that is decided on, or sent again, at an instant is given up. */
export function giveUpAt(at: string): string {
  return later(at, TRIED_FOR_MS);
}

/** When to try again after the `tries`-th try failed, or undefined to give the mail up. */
export function nextTryAt(failed: {
  readonly fault: MailFault;
  readonly tries: number;
  readonly now: string;
  readonly giveUpAt: string;
}): string | undefined {
  const { fault, tries, now } = failed;
  if (FINAL_FAULTS.includes(fault) || now >= failed.giveUpAt) return undefined;
  const next = later(now, pauseMinutes(fault, tries) * MINUTE_MS);
  return next < failed.giveUpAt ? next : failed.giveUpAt;
}

/** An instant so many milliseconds later, as text that sorts. */
export function later(instant: string, milliseconds: number): string {
  return new Date(Date.parse(instant) + milliseconds).toISOString();
}

function pauseMinutes(fault: MailFault, tries: number): number {
  return SERVER_FAULTS.includes(fault)
    ? (SERVER_PAUSES_MIN[tries - 1] ?? LATER_SERVER_PAUSE_MIN)
    : (PAUSES_MIN[tries - 1] ?? LATER_PAUSE_MIN);
}
