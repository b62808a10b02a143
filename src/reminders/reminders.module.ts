import { Module } from '@nestjs/common';
import { DiaryModule } from './diary/diary.module.js';
import { DigestModule } from './digest/digest.module.js';
import { DueIndexModule } from './due-index/due-index.module.js';
import { FeedModule } from './feed/feed.module.js';
import { OutboxModule } from './outbox/outbox.module.js';
import { PreferencesModule } from './preferences/preferences.module.js';
import { ScheduleModule } from './schedule/schedule.module.js';
import { UrgentModule } from './urgent/urgent.module.js';

/** The company is told in time: due diary, mail reminders, calendar feed. */
@Module({
  imports: [
    DueIndexModule,
    DiaryModule,
    FeedModule,
    PreferencesModule,
    DigestModule,
    UrgentModule,
    OutboxModule,
    ScheduleModule,
  ],
})
export class RemindersModule {}
