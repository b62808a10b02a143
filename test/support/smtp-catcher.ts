import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import { simpleParser, type ParsedMail } from 'mailparser';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { LOOPBACK } from './smtp-certificate.js';

/** A mail as the server took it, read by a parser that is not ours. */
export interface CaughtMail {
  readonly from: string;
  readonly to: readonly string[];
  readonly raw: string;
  readonly parsed: ParsedMail;
  readonly secure: boolean;
  /** Which connection it came by: the word that `onConnect` was given. */
  readonly connection: string;
}

/** What the server does with a mail that was handed over: take it, refuse it with a code, take it and drop the line, or say nothing. */
type AfterData = 'take' | 'drop' | 'hang' | number;

interface Behaviour {
  /** TLS from the first byte. STARTTLS is offered otherwise. */
  readonly secure?: boolean;
  /** Who must sign in; nobody where left out. */
  readonly account?: { readonly user: string; readonly password: string };
  /** Called as someone connects, before the greeting and so before any mail of theirs. */
  readonly onConnect?: (connection: string) => void;
  /** The code to refuse an addressee with. */
  readonly refuse?: (address: string) => number | undefined;
  readonly refuseSender?: number;
  readonly afterData?: (mail: CaughtMail) => AfterData | Promise<AfterData>;
  readonly port?: number;
}

/** A real SMTP server (npm `smtp-server`) on loopback that keeps what it took. */
export interface SmtpCatcher {
  readonly port: number;
  /** What it took, also where it then dropped the line. */
  readonly mails: readonly CaughtMail[];
  /** How often anyone connected. */
  readonly connections: () => number;
  readonly close: () => Promise<void>;
}

/** Starts it on a free port, or on the one that is asked for. */
export async function catchMail(behaviour: Behaviour = {}): Promise<SmtpCatcher> {
  const mails: CaughtMail[] = [];
  let connections = 0;
  const server = new SMTPServer({
    ...LOOPBACK,
    secure: behaviour.secure ?? false,
    closeTimeout: 50,
    disableReverseLookup: true,
    ...signIn(behaviour),
    onConnect: ({ id }, done) => {
      connections += 1;
      behaviour.onConnect?.(id);
      done();
    },
    onMailFrom: (_address, _session, done) => done(refusal(behaviour.refuseSender)),
    onRcptTo: ({ address }, _session, done) => done(refusal(behaviour.refuse?.(address))),
    onData: (stream, session, done) => {
      const take = async () => {
        const raw = await text(stream);
        const { secure, id: connection } = session;
        const { mailFrom, rcptTo } = session.envelope;
        const from = mailFrom ? mailFrom.address : '';
        const to = rcptTo.map(({ address }) => address);
        const mail = { from, to, raw, parsed: await simpleParser(raw), secure, connection };
        const after = (await behaviour.afterData?.(mail)) ?? 'take';
        if (typeof after !== 'number') mails.push(mail);
        if (after === 'hang') return;
        if (after === 'drop') dropLines(server);
        else done(refusal(typeof after === 'number' ? after : undefined));
      };
      take().catch(done);
    },
  });
  server.on('error', () => undefined); // lines that break are part of the tests
  const listening = server.listen(behaviour.port ?? 0, '127.0.0.1');
  await once(listening, 'listening');
  return {
    port: (listening.address() as AddressInfo).port,
    mails,
    connections: () => connections,
    close: () => new Promise((resolve) => server.close(resolve)),
  };
}

function signIn({ account }: Behaviour): SMTPServerOptions {
  if (!account) return { authOptional: true };
  return {
    onAuth: ({ username, password }, _session, done) => {
      if (username === account.user && password === account.password) done(null, { user: username });
      else done(new Error('Wrong name or password'));
    },
  };
}

function refusal(code: number | undefined): Error | null {
  return code === undefined ? null : Object.assign(new Error('Refused for the test'), { responseCode: code });
}

/** Breaks every line without a reply, as a crash would. */
function dropLines(server: SMTPServer): void {
  for (const { _socket } of server.connections as Set<{ _socket: { destroy(): void } }>) _socket.destroy();
}
