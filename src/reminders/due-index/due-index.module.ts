import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { GearFactsModule } from '../../planner/gear-facts.module.js';
import { StoresModule } from '../../stores/stores.module.js';
import { DueFacts } from './due-facts.service.js';
import { DueIndex } from './due-index.service.js';
import { SchemeWatch } from './scheme-watch.service.js';

/** Finds what is due without looking at the rest of the register. */
@Module({
  imports: [CatalogueModule, GearFactsModule, StoresModule],
  providers: [DueFacts, DueIndex, SchemeWatch],
  exports: [DueFacts, DueIndex],
})
export class DueIndexModule {}
