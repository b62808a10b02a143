import type { StateKind } from '../../web/components/state-mark.js';
import type { MailFault, MailState } from './mail.entity.js';

/** How the state of a mail is shown. */
export const MAIL_STATE_WORDS: Readonly<Record<MailState, { state: StateKind; word: string }>> = {
  waiting: { state: 'due', word: 'waits' },
  sent: { state: 'ok', word: 'sent' },
  dead: { state: 'refused', word: 'given up' },
  replaced: { state: 'plain', word: 'overtaken before it was sent' },
};

/** What went wrong with a try, and what a person can do about it. */
export const FAULT_WORDS: Readonly<Record<MailFault, { what: string; next: string }>> = {
  addressRefused: {
    what: 'The address was refused.',
    next: 'Ask its owner for the right address, mend it in their choice of mail, then send this again: it goes to the mended address.',
  },
  mailRefused: {
    what: 'The mail server refused this mail.',
    next: 'Read its answer, put right what it objects to with whoever keeps the mail server, then send the mail again.',
  },
  senderRefused: {
    what: 'The mail server takes no mail from the address that Tackleroom sends from.',
    next: 'Set MAIL_FROM to an address that the mail account may send from, and start Tackleroom again.',
  },
  notYet: {
    what: 'The mail server put it off.',
    next: 'Nothing to do yet: it is tried again.',
  },
  signInRefused: {
    what: 'The mail server did not take the sign-in.',
    next: 'Check SMTP_USER and SMTP_PASSWORD, and start Tackleroom again.',
  },
  notPrivate: {
    what: 'No private line to the mail server could be opened.',
    next: 'Check SMTP_HOST, SMTP_PORT and SMTP_TLS. If the certificate of the server comes from an authority of your own, name its file in NODE_EXTRA_CA_CERTS. Then start Tackleroom again.',
  },
  noAnswer: {
    what: 'The mail server could not be reached, or would not talk.',
    next: 'Check that it runs, and that SMTP_HOST and SMTP_PORT name it. It is tried again every few minutes.',
  },
  lineLost: {
    what: 'The line broke before the mail server had confirmed it.',
    next: 'Nothing to do yet: it is tried again. It may arrive twice.',
  },
  nobodyThere: {
    what: 'Its person had no account or no address any more.',
    next: 'See that somebody else knows. It can be sent again once the account is open and has an address.',
  },
};
