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

/** A mail as the outbox takes it, addressed to a person, in plain text and in HTML. What names write keeps its order. */
export function letter(
  content: MailContent,
  { personId, name, address }: Addressee,
): Pick<NewMail, 'personId' | 'toName' | 'toAddress' | 'subject' | 'plainText' | 'html'> {
  return {
    personId,
    toName: inOrder(name),
    toAddress: address,
    subject: inOrder(content.subject),
    plainText: inOrder(mailText(content)),
    html: inOrder(mailHtml(content)),
  };
}

/** Marks that turn the direction of writing around would turn the rest of the line with them (Unicode UAX #9). */
function inOrder(text: string): string {
  return text.replace(/\p{Bidi_Control}/gu, '');
}
