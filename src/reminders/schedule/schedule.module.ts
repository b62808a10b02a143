import { Module } from '@nestjs/common';
import { DigestModule } from '../digest/digest.module.js';
import { DueIndexModule } from '../due-index/due-index.module.js';
import { OutboxModule } from '../outbox/outbox.module.js';
import { UrgentModule } from '../urgent/urgent.module.js';
import { ReminderSchedule } from './reminder-schedule.service.js';

/** When all of it happens. */
@Module({
  imports: [DigestModule, DueIndexModule, OutboxModule, UrgentModule],
  providers: [ReminderSchedule],
  exports: [ReminderSchedule],
})
export class ScheduleModule {}
