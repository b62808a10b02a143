import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { CommitmentsModule } from '../custody/commitments.module.js';
import { PeopleModule } from '../people/people.module.js';
import { RegisterModule } from '../register/register.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { Batches } from './batches.service.js';
import { GearFiles } from './gear-files.service.js';
import { Quarantine } from './quarantine.service.js';
import { TraceController } from './trace.controller.js';
import { TracePages } from './trace.pages.js';
import { Traces } from './traces.service.js';

/** Looks across the features: what waits in quarantine, what lies behind a defect, a batch, the gear of a job. */
@Module({
  imports: [CatalogueModule, CommitmentsModule, PeopleModule, RegisterModule, StoresModule],
  controllers: [TraceController, TracePages],
  providers: [Batches, GearFiles, Quarantine, Traces],
})
export class TraceModule {}
