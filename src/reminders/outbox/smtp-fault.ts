import type { MailFault } from './mail.entity.js';

/** What nodemailer says of a failed try. */
interface SmtpError {
  readonly code: string | undefined;
  /** The command that was answered, such as `RCPT TO`. */
  readonly command: string | undefined;
  /** The reply code of RFC 5321, 4.2, where the server replied. */
  readonly reply: number | undefined;
  /** What kept the line from being opened; undefined once it was open. */
  readonly beforeOpen: boolean;
}

const CLOSING = 421;
const TOO_LARGE = 552;

/** Why a try failed, from what nodemailer threw. Unknown errors count as a lost line, which is tried again. */
export function smtpFault(thrown: unknown): MailFault {
  const error = read(thrown);
  if (error.code === 'EAUTH' || error.code === 'ENOAUTH') return 'signInRefused';
  if (error.code === 'ETLS' || isCertificateFault(thrown)) return 'notPrivate';
  if (error.reply !== undefined) return replied(error.reply, error.command);
  // Refused by nodemailer itself, before the server was asked.
  if (error.code === 'EENVELOPE') return 'addressRefused';
  if (error.code === 'EMESSAGE') return 'mailRefused';
  return error.beforeOpen ? 'noAnswer' : 'lineLost';
}

/** RFC 5321, 4.2.1: 4yz is for now, 5yz for good. */
function replied(reply: number, command: string | undefined): MailFault {
  if (reply === CLOSING) return 'noAnswer';
  if (reply < 500) return 'notYet';
  if (command === 'RCPT TO') return 'addressRefused';
  if (command === 'DATA' || reply === TOO_LARGE) return 'mailRefused';
  return command === 'MAIL FROM' ? 'senderRefused' : 'noAnswer';
}

function read(thrown: unknown): SmtpError {
  const get = (name: string): unknown => (thrown instanceof Error ? Reflect.get(thrown, name) : undefined);
  const [code, command, reply] = [get('code'), get('command'), get('responseCode')];
  return {
    code: typeof code === 'string' ? code : undefined,
    command: typeof command === 'string' ? command : undefined,
    reply: typeof reply === 'number' ? reply : undefined,
    beforeOpen:
      code === 'EDNS' ||
      get('syscall') === 'connect' ||
      get('timeoutType') === 'CONNECT_TIMEOUT' ||
      get('timeoutType') === 'GREETING_TIMEOUT',
  };
}

/** Node.js names what is wrong with a certificate by a code, which nodemailer keeps beside its own. */
function isCertificateFault(thrown: unknown): boolean {
  const code: unknown = thrown instanceof Error ? Reflect.get(thrown, 'originalCode') : undefined;
  return typeof code === 'string' && /CERT|SELF_SIGNED|UNABLE_TO_|^ERR_(TLS|SSL)|EPROTO/.test(code);
}
