import { Module } from '@nestjs/common';
import { CustodyModule } from '../custody/custody.module.js';
import { InspectionsModule } from '../inspections/inspections.module.js';
import { JobsModule } from '../jobs/jobs.module.js';
import { PeopleModule } from '../people/people.module.js';
import { RegisterModule } from '../register/register.module.js';
import { PreferencesModule } from '../reminders/preferences/preferences.module.js';
import { ScheduleModule } from '../reminders/schedule/schedule.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { DemoMail } from './demo-mail.js';
import { DemoRegister } from './demo-register.js';
import { DemoScenario } from './demo-scenario.js';

/** The invented firm that `npm run demo` shows. */
@Module({
  imports: [
    PeopleModule,
    StoresModule,
    RegisterModule,
    InspectionsModule,
    JobsModule,
    CustodyModule,
    PreferencesModule,
    ScheduleModule,
  ],
  providers: [DemoMail, DemoRegister, DemoScenario],
})
export class DemoModule {}
