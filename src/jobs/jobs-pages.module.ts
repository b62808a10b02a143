import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { ChecksModule } from '../checks/checks.module.js';
import { CounterPages } from '../custody/counter.pages.js';
import { Counter } from '../custody/counter.service.js';
import { CustodyModule } from '../custody/custody.module.js';
import { SiteUsePages } from '../custody/site-use.pages.js';
import { GearFactsModule } from '../planner/gear-facts.module.js';
import { PlanPages } from '../planner/plan.pages.js';
import { PlannerModule } from '../planner/planner.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { JobSheets } from './job-sheet.service.js';
import { JobsModule } from './jobs.module.js';
import { JobsPages } from './jobs.pages.js';

/** The pages of a job: its sheet, its plan and the counter. Apart from their services, since each page looks at several. */
@Module({
  imports: [
    CatalogueModule,
    ChecksModule,
    CustodyModule,
    GearFactsModule,
    JobsModule,
    PlannerModule,
    StoresModule,
  ],
  controllers: [JobsPages, PlanPages, CounterPages, SiteUsePages],
  providers: [Counter, JobSheets],
})
export class JobsPagesModule {}
