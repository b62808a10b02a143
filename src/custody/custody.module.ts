import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { GearFactsModule } from '../planner/gear-facts.module.js';
import { PlannerModule } from '../planner/planner.module.js';
import { CustodyController } from './custody.controller.js';
import { BookingFlags } from './flags.service.js';
import { HandOuts } from './hand-outs.service.js';
import { JobBookings } from './job-bookings.service.js';
import { Reservations } from './reservations.service.js';
import { Returns } from './returns.service.js';

@Module({
  imports: [CatalogueModule, GearFactsModule, PlannerModule],
  controllers: [CustodyController],
  providers: [BookingFlags, HandOuts, JobBookings, Reservations, Returns],
  exports: [BookingFlags, HandOuts, JobBookings, Reservations, Returns],
})
export class CustodyModule {}
