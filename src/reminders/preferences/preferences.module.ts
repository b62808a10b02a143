import { Module } from '@nestjs/common';
import { StoresModule } from '../../stores/stores.module.js';
import { OutboxModule } from '../outbox/outbox.module.js';
import { MailChoicesController } from './mail-choices.controller.js';
import { MailChoicesPages } from './mail-choices.pages.js';
import { MailChoices } from './mail-choices.service.js';
import { MailWarnings } from './mail-warnings.service.js';
import { ReminderRulesController } from './reminder-rules.controller.js';
import { ReminderRulesPages } from './reminder-rules.pages.js';
import { ReminderRules } from './reminder-rules.service.js';

/** When each store wants to hear, and who gets how much mail where. */
@Module({
  imports: [OutboxModule, StoresModule],
  controllers: [MailChoicesController, MailChoicesPages, ReminderRulesController, ReminderRulesPages],
  providers: [MailChoices, MailWarnings, ReminderRules],
  exports: [MailChoices, MailWarnings, ReminderRules],
})
export class PreferencesModule {}
