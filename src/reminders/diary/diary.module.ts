import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { CommitmentsModule } from '../../custody/commitments.module.js';
import { StoresModule } from '../../stores/stores.module.js';
import { DueIndexModule } from '../due-index/due-index.module.js';
import { PreferencesModule } from '../preferences/preferences.module.js';
import { DiaryController } from './diary.controller.js';
import { DiaryOverview } from './diary-overview.service.js';
import { DiaryPages } from './diary.pages.js';
import { DueDiary } from './diary.service.js';

/** What falls due, when, where it is, and which job it would stop. */
@Module({
  imports: [CatalogueModule, CommitmentsModule, DueIndexModule, PreferencesModule, StoresModule],
  controllers: [DiaryController, DiaryPages],
  providers: [DueDiary, DiaryOverview],
  exports: [DueDiary],
})
export class DiaryModule {}
