import type { NewMail } from '../outbox/post-mail.js';
import type { MailContent } from './mail-content.js';
import { mailHtml } from './mail-html.js';
import { mailText } from './mail-text.js';

/** Who a mail is for. */
export interface Addressee {
  readonly personId: number;
  readonly name: string;
  readonly address: string;
}

/** A mail as the outbox takes it, addressed to a person, in plain text and in HTML. */
export function letter(
  content: MailContent,
  { personId, name, address }: Addressee,
): Pick<NewMail, 'personId' | 'toName' | 'toAddress' | 'subject' | 'plainText' | 'html'> {
  return {
    personId,
    toName: name,
    toAddress: address,
    subject: content.subject,
    plainText: mailText(content),
    html: mailHtml(content),
  };
}
