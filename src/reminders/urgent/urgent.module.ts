import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { CustodyModule } from '../../custody/custody.module.js';
import { StoresModule } from '../../stores/stores.module.js';
import { OutboxModule } from '../outbox/outbox.module.js';
import { PreferencesModule } from '../preferences/preferences.module.js';
import { UnfitBookings } from './unfit-bookings.service.js';
import { UrgentSweep } from './urgent-sweep.service.js';
import { UrgentWriter } from './urgent-writer.service.js';

/** Dangers found and booked gear that is not fit any more, told at once. */
@Module({
  imports: [CatalogueModule, CustodyModule, OutboxModule, PreferencesModule, StoresModule],
  providers: [UnfitBookings, UrgentSweep, UrgentWriter],
  exports: [UrgentSweep],
})
export class UrgentModule {}
