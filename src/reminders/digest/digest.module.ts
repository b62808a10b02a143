import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { StoresModule } from '../../stores/stores.module.js';
import { DiaryModule } from '../diary/diary.module.js';
import { OutboxModule } from '../outbox/outbox.module.js';
import { PreferencesModule } from '../preferences/preferences.module.js';
import { DigestSweep } from './digest-sweep.service.js';
import { DigestWriter } from './digest-writer.service.js';

/** What falls due, told once a day to each who is to hear of it. */
@Module({
  imports: [CatalogueModule, DiaryModule, OutboxModule, PreferencesModule, StoresModule],
  providers: [DigestSweep, DigestWriter],
  exports: [DigestSweep],
})
export class DigestModule {}
