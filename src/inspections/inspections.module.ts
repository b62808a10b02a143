import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { CommitmentsModule } from '../custody/commitments.module.js';
import { DocumentsModule } from '../documents/documents.module.js';
import { RegisterModule } from '../register/register.module.js';
import { GearFactsModule } from '../planner/gear-facts.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { DefectPages } from './defects.pages.js';
import { DefectsService } from './defects.service.js';
import { ExaminationDrafts } from './examination-drafts.service.js';
import { ExaminationPages } from './examination.pages.js';
import { ExaminationPrefill } from './examination-prefill.service.js';
import { ExaminationReports } from './examination-reports.service.js';
import { ExaminationsController } from './examinations.controller.js';
import { ExaminationsService } from './examinations.service.js';
import { InspectionsController } from './inspections.controller.js';
import { InspectionPages } from './inspections.pages.js';
import { InspectionsService } from './inspections.service.js';
import { ItemRecords } from './item-records.service.js';
import { ItemPages } from './item.pages.js';

@Module({
  imports: [
    RegisterModule,
    CommitmentsModule,
    CatalogueModule,
    DocumentsModule,
    GearFactsModule,
    StoresModule,
  ],
  controllers: [
    InspectionsController,
    ExaminationsController,
    ExaminationPages,
    ItemPages,
    InspectionPages,
    DefectPages,
  ],
  providers: [
    InspectionsService,
    DefectsService,
    ItemRecords,
    ExaminationsService,
    ExaminationDrafts,
    ExaminationReports,
    ExaminationPrefill,
  ],
  exports: [InspectionsService, DefectsService, ItemRecords],
})
export class InspectionsModule {}
