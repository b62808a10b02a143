import { Module } from '@nestjs/common';
import { SETTINGS, type Settings } from '../../settings.js';
import { publicAddress } from '../public-address.js';
import { KeptMail } from './kept-mail.service.js';
import { LocalMailbox, MAIL_LINE, type MailLine } from './mail-line.js';
import { MailQueue } from './mail-queue.service.js';
import { MailSender } from './mail-sender.service.js';
import { MailboxPages } from './mailbox.pages.js';
import { OldMail } from './old-mail.service.js';
import { OutboxController } from './outbox.controller.js';
import { OutboxPages } from './outbox.pages.js';
import { Outbox } from './post-mail.js';
import { SmtpLine } from './smtp-line.js';

/** Mail that was decided on, until a mail server has taken it. */
@Module({
  controllers: [OutboxController, OutboxPages, MailboxPages],
  providers: [
    Outbox,
    KeptMail,
    MailQueue,
    MailSender,
    OldMail,
    { provide: MAIL_LINE, inject: [SETTINGS], useFactory: mailLine },
  ],
  exports: [Outbox, MailSender, OldMail],
})
export class OutboxModule {}

function mailLine(settings: Settings): MailLine | undefined {
  if (settings.demo) return new LocalMailbox();
  return settings.mail ? new SmtpLine(settings.mail, publicAddress(settings)) : undefined;
}
