import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { CalculationController } from './calculation.controller.js';
import { CalculationPages } from './calculation.pages.js';
import { Calculations } from './calculations.service.js';

/** The calculation sheet of a job, as it stands and as it was kept. */
@Module({
  imports: [CatalogueModule],
  controllers: [CalculationController, CalculationPages],
  providers: [Calculations],
})
export class CalculationModule {}
