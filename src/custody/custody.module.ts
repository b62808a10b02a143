import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { GearFactsModule } from '../planner/gear-facts.module.js';
import { PlannerModule } from '../planner/planner.module.js';
import { CustodyController } from './custody.controller.js';
import { BookingFlags } from './flags.service.js';
import { HandOuts } from './hand-outs.service.js';
import { JobBookings } from './job-bookings.service.js';
import { Lifts } from './lifts.service.js';
import { Reservations } from './reservations.service.js';
import { Returns } from './returns.service.js';
import { Shocks } from './shocks.service.js';
import { SiteUseController } from './site-use.controller.js';
import { SiteUse } from './site-use.service.js';

@Module({
  imports: [CatalogueModule, GearFactsModule, PlannerModule],
  controllers: [CustodyController, SiteUseController],
  providers: [BookingFlags, HandOuts, JobBookings, Lifts, Reservations, Returns, Shocks, SiteUse],
  exports: [BookingFlags, HandOuts, JobBookings, Lifts, Reservations, Returns, Shocks, SiteUse],
})
export class CustodyModule {}
