import { isIP } from 'node:net';
import { bareAddress } from './mail-address.js';

/** How mail leaves. */
export interface MailSettings {
  readonly host: string;
  readonly port: number;
  /** `implicit`: TLS from the first byte; `required`: STARTTLS or nothing; `none`: in the clear, for a server on this machine. */
  readonly tls: MailTls;
  readonly user?: string;
  readonly password?: string;
  /** The address that mail comes from. */
  readonly from: string;
}

type MailTls = 'implicit' | 'required' | 'none';
type Environment = Readonly<Record<string, string | undefined>>;

/** The ports of RFC 8314 for submission by TLS and by STARTTLS, and that of RFC 5321. */
const PORTS: Readonly<Record<MailTls, number>> = { implicit: 465, required: 587, none: 25 };

/**
 * Reads `SMTP_HOST`, `SMTP_PORT`, `SMTP_TLS`, `SMTP_USER`, `SMTP_PASSWORD` and `MAIL_FROM`. Gives no settings where no
 * mail server is set, and every problem by the name of its setting, never by its value.
 */
export function readMailSettings(environment: Environment): { mail?: MailSettings; problems: string[] } {
  const set = (name: string) => environment[name] || undefined;
  const host = set('SMTP_HOST');
  if (host === undefined) return { problems: withoutServer(environment) };
  const tls = asTls(set('SMTP_TLS') ?? 'required');
  const port = Number(set('SMTP_PORT') ?? PORTS[tls ?? 'required']);
  const from = bareAddress(set('MAIL_FROM') ?? '');
  const [user, password] = [set('SMTP_USER'), set('SMTP_PASSWORD')];
  const problems = problemsOf({ host, tls, port, from, user, password });
  if (problems.length > 0 || tls === undefined || from === undefined) return { problems };
  const signIn = user !== undefined && password !== undefined ? { user, password } : {};
  return { mail: { host, port, tls, ...signIn, from }, problems };
}

function withoutServer(environment: Environment): string[] {
  const others = ['SMTP_PORT', 'SMTP_TLS', 'SMTP_USER', 'SMTP_PASSWORD', 'MAIL_FROM'];
  const lonely = others.filter((name) => environment[name]);
  return lonely.length > 0 ? [`SMTP_HOST: name the mail server, or leave out ${lonely.join(', ')}`] : [];
}

function problemsOf(read: {
  host: string;
  tls: MailTls | undefined;
  port: number;
  from: string | undefined;
  user: string | undefined;
  password: string | undefined;
}): string[] {
  const { host, tls, port, from, user, password } = read;
  const checks: readonly (readonly [boolean, string])[] = [
    [isHost(host), 'SMTP_HOST: write the name or address of the mail server alone, without a port'],
    [tls !== undefined, 'SMTP_TLS: write implicit, required or none'],
    [Number.isInteger(port) && port >= 1 && port <= 65535, 'SMTP_PORT: write a whole number from 1 to 65535'],
    [from !== undefined, 'MAIL_FROM: write the one address that mail comes from, without a name beside it'],
    [(user === undefined) === (password === undefined), 'SMTP_USER, SMTP_PASSWORD: write both, or neither'],
    [
      password === undefined || tls !== 'none' || isLoopback(host),
      'SMTP_TLS: a password goes to another machine through TLS only; write implicit or required',
    ],
  ];
  return checks.flatMap(([holds, problem]) => (holds ? [] : [problem]));
}

function asTls(text: string): MailTls | undefined {
  return text === 'implicit' || text === 'required' || text === 'none' ? text : undefined;
}

/** A host name of RFC 1123, 2.1, or an IP address. */
function isHost(text: string): boolean {
  return isIP(text) !== 0 || /^[a-z\d]([a-z\d.-]{0,251}[a-z\d])?$/i.test(text);
}

function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || (isIP(host) === 4 && host.startsWith('127.'));
}
