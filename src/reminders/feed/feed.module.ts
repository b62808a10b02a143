import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { StoresModule } from '../../stores/stores.module.js';
import { DiaryModule } from '../diary/diary.module.js';
import { DueIndexModule } from '../due-index/due-index.module.js';
import { PreferencesModule } from '../preferences/preferences.module.js';
import { CalendarFeedsController } from './calendar-feeds.controller.js';
import { CalendarFeedsPages } from './calendar-feeds.pages.js';
import { CalendarFeeds } from './calendar-feeds.service.js';
import { FeedAddress } from './feed-address.service.js';
import { FeedController } from './feed.controller.js';
import { FeedDays } from './feed-days.service.js';
import { FeedReader } from './feed-reader.service.js';
import { FeedState } from './feed-state.service.js';

/** What falls due, in the calendars that people look at anyway. */
@Module({
  imports: [CatalogueModule, DiaryModule, DueIndexModule, PreferencesModule, StoresModule],
  controllers: [CalendarFeedsController, CalendarFeedsPages, FeedController],
  providers: [CalendarFeeds, FeedAddress, FeedDays, FeedReader, FeedState],
})
export class FeedModule {}
