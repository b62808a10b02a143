import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { GearFactsModule } from './gear-facts.module.js';
import { PlannerController } from './planner.controller.js';
import { PlannerService } from './planner.service.js';

@Module({
  imports: [CatalogueModule, GearFactsModule],
  controllers: [PlannerController],
  providers: [PlannerService],
  exports: [PlannerService],
})
export class PlannerModule {}
