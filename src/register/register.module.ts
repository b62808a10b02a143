import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { GearFactsModule } from '../planner/gear-facts.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { FitnessService } from './fitness.service.js';
import { RegisterController } from './register.controller.js';
import { RegisterPages } from './register.pages.js';
import { RegisterSearch } from './register-search.service.js';
import { RegisterService } from './register.service.js';
import { Standings } from './standings.service.js';

@Module({
  imports: [CatalogueModule, GearFactsModule, StoresModule],
  controllers: [RegisterController, RegisterPages],
  providers: [RegisterService, RegisterSearch, Standings, FitnessService],
  exports: [RegisterService, Standings, FitnessService],
})
export class RegisterModule {}
