import type { MailEntity, MailFault } from './mail.entity.js';

/** What a mail needs to go out. */
export type OutgoingMail = Pick<
  MailEntity,
  'messageId' | 'decidedAt' | 'toName' | 'toAddress' | 'subject' | 'plainText' | 'html'
>;

/** What became of one try: taken where there is no fault. */
export interface Delivery {
  readonly fault: MailFault | null;
  /** What the server said, or what kept it from being asked. */
  readonly answer: string;
}

/** The way that mail leaves by: to a mail server, or in the demo to the page of the local mailbox. */
export interface MailLine {
  /** Tries once to hand a mail over. What goes wrong is told, not thrown. */
  send(mail: OutgoingMail): Promise<Delivery>;
  /** Hangs up. */
  close(): void;
}

/** The dependency-injection token of the mail line; undefined where no mail server is set. */
export const MAIL_LINE = Symbol('mail line');

/** In the demo nothing leaves the machine: mail counts as arrived on the page of the local mailbox. */
export class LocalMailbox implements MailLine {
  async send(): Promise<Delivery> {
    return { fault: null, answer: 'local mailbox' };
  }

  close(): void {}
}
