import { Module } from '@nestjs/common';
import { GearFactsModule } from '../planner/gear-facts.module.js';
import { BoardService } from './board.service.js';
import { StoresModule } from './stores.module.js';
import { StoresPages } from './stores.pages.js';

/** Apart from the stores themselves, since the board looks at gear, and gear stands in stores. */
@Module({ imports: [StoresModule, GearFactsModule], controllers: [StoresPages], providers: [BoardService] })
export class StoresPagesModule {}
