import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { CustodyModule } from '../custody/custody.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { JobList } from './job-list.service.js';
import { JobsController } from './jobs.controller.js';
import { JobsService } from './jobs.service.js';
import { PanelSchedules } from './panel-schedules.service.js';

@Module({
  imports: [CatalogueModule, CustodyModule, StoresModule],
  controllers: [JobsController],
  providers: [JobList, JobsService, PanelSchedules],
  exports: [JobList, JobsService, PanelSchedules],
})
export class JobsModule {}
