import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { CustodyModule } from '../../custody/custody.module.js';
import { JobsModule } from '../../jobs/jobs.module.js';
import { StoresModule } from '../../stores/stores.module.js';
import { GearFactsModule } from '../gear-facts.module.js';
import { PlannerModule } from '../planner.module.js';
import { WhatIfController } from './what-if.controller.js';
import { WhatIfPages } from './what-if.pages.js';
import { WhatIfService } from './what-if.service.js';

/** What a change of a job would do. Apart from the planner, which jobs themselves look at. */
@Module({
  imports: [CatalogueModule, CustodyModule, GearFactsModule, JobsModule, PlannerModule, StoresModule],
  controllers: [WhatIfController, WhatIfPages],
  providers: [WhatIfService],
})
export class WhatIfModule {}
