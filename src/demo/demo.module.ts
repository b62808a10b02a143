import { Module } from '@nestjs/common';
import { CustodyModule } from '../custody/custody.module.js';
import { InspectionsModule } from '../inspections/inspections.module.js';
import { JobsModule } from '../jobs/jobs.module.js';
import { PeopleModule } from '../people/people.module.js';
import { RegisterModule } from '../register/register.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { DemoRegister } from './demo-register.js';
import { DemoScenario } from './demo-scenario.js';

/** The invented firm that `npm run demo` shows. */
@Module({
  imports: [PeopleModule, StoresModule, RegisterModule, InspectionsModule, JobsModule, CustodyModule],
  providers: [DemoRegister, DemoScenario],
})
export class DemoModule {}
