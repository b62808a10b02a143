import { Module } from '@nestjs/common';
import { CommitmentsModule } from '../custody/commitments.module.js';
import { NoticesController } from './notices.controller.js';
import { NoticePages } from './notices.pages.js';
import { NoticesService } from './notices.service.js';

/** What storeman and manager must hear at once. Notices are raised inside the changes they tell of: see `notices.ts`. */
@Module({
  imports: [CommitmentsModule],
  controllers: [NoticesController, NoticePages],
  providers: [NoticesService],
  exports: [NoticesService],
})
export class NoticesModule {}
