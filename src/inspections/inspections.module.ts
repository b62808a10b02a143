import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { CommitmentsModule } from '../custody/commitments.module.js';
import { RegisterModule } from '../register/register.module.js';
import { DefectPages } from './defects.pages.js';
import { DefectsService } from './defects.service.js';
import { InspectionsController } from './inspections.controller.js';
import { InspectionPages } from './inspections.pages.js';
import { InspectionsService } from './inspections.service.js';
import { ItemRecords } from './item-records.service.js';
import { ItemPages } from './item.pages.js';

@Module({
  imports: [RegisterModule, CommitmentsModule, CatalogueModule],
  controllers: [InspectionsController, ItemPages, InspectionPages, DefectPages],
  providers: [InspectionsService, DefectsService, ItemRecords],
  exports: [InspectionsService, DefectsService, ItemRecords],
})
export class InspectionsModule {}
