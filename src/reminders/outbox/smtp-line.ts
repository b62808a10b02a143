import { createTransport, type Transporter } from 'nodemailer';
import type { MailSettings } from '../../mail-settings.js';
import { bareAddress } from '../../mail-address.js';
import type { Delivery, MailLine, OutgoingMail } from './mail-line.js';
import { smtpFault } from './smtp-fault.js';

/** How long the mail server may take, in milliseconds, and whose certificates it may show. */
export interface SmtpLimits {
  readonly connectionMs: number;
  readonly greetingMs: number;
  /** How long the line may be silent. */
  readonly silenceMs: number;
  /** How long one mail may take altogether. A server's claim on a mail lasts longer: see `CLAIM_MS`. */
  readonly wholeMs: number;
  /** A certificate authority of one's own, as PEM. Otherwise those of Node.js and of NODE_EXTRA_CA_CERTS. */
  readonly authority?: string | undefined;
}

const LIMITS: SmtpLimits = {
  connectionMs: 20_000,
  greetingMs: 20_000,
  silenceMs: 60_000,
  wholeMs: 90_000,
};

const MOST_CONNECTIONS = 2;
const IDLE_MS = 30_000;
const MOST_ANSWER = 500;

/** Hands mail to an SMTP server (RFC 5321), as multipart of plain text and HTML. */
export class SmtpLine implements MailLine {
  private readonly transport: Transporter;

  constructor(
    private readonly mail: MailSettings,
    /** The address of Tackleroom, for the way to fewer mails. */
    private readonly address: string,
    private readonly limits: SmtpLimits = LIMITS,
  ) {
    this.transport = createTransport({
      pool: true,
      maxConnections: MOST_CONNECTIONS,
      maxRequeues: 1, // only mail of which not a byte was sent, over a line that went dead while idle
      idleTimeout: IDLE_MS,
      host: mail.host,
      port: mail.port,
      ...securityOf(mail, limits),
      ...(mail.user ? { auth: { user: mail.user, pass: mail.password ?? '' } } : {}),
      connectionTimeout: limits.connectionMs,
      greetingTimeout: limits.greetingMs,
      socketTimeout: limits.silenceMs,
      dnsTimeout: limits.connectionMs,
      disableFileAccess: true,
      disableUrlAccess: true,
    });
    // A line that breaks while nothing is sent is no error: the next mail opens another.
    this.transport.on('error', () => undefined);
  }

  async send(mail: OutgoingMail): Promise<Delivery> {
    // Nodemailer would make the best of it, and so write to whoever a line break or a comma brings in.
    if (bareAddress(mail.toAddress) === undefined)
      return { fault: 'addressRefused', answer: 'It is not one address alone.' };
    try {
      const { response } = await this.transport.sendMail({
        ...this.message(mail),
        signal: AbortSignal.timeout(this.limits.wholeMs),
      });
      return { fault: null, answer: this.withoutSecrets(response ?? '') };
    } catch (error) {
      return { fault: smtpFault(error), answer: this.withoutSecrets(wordsOf(error)) };
    }
  }

  close(): void {
    this.transport.close();
  }

  private message({ messageId, decidedAt, toName, toAddress, subject, plainText, html }: OutgoingMail) {
    return {
      messageId,
      date: decidedAt, // that of the decision, so that a second try is the same mail
      from: { name: 'Tackleroom', address: this.mail.from },
      to: { name: toName, address: toAddress },
      subject,
      text: plainText,
      html,
      headers: {
        'Auto-Submitted': 'auto-generated', // RFC 3834, 5: no holiday replies
        'List-Unsubscribe': `<${this.address}/me/mail>`, // RFC 2369
      },
    };
  }

  /** Some servers repeat what they were sent. */
  private withoutSecrets(answer: string): string {
    const { password } = this.mail;
    const told = password ? answer.replaceAll(password, '(password)') : answer;
    return told.replace(/[\p{Cc}\p{Cs}]+/gu, ' ').slice(0, MOST_ANSWER);
  }
}

function securityOf({ tls }: MailSettings, { authority }: SmtpLimits) {
  return {
    secure: tls === 'implicit',
    requireTLS: tls === 'required',
    ignoreTLS: tls === 'none',
    tls: {
      minVersion: 'TLSv1.2' as const,
      rejectUnauthorized: true,
      ...(authority ? { ca: authority } : {}),
    },
  };
}

function wordsOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const response: unknown = Reflect.get(error, 'response');
  return typeof response === 'string' && response !== '' ? response : error.message;
}
