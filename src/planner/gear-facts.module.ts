import { Module } from '@nestjs/common';
import { AwayFacts } from '../custody/away-facts.service.js';
import { CommitmentsModule } from '../custody/commitments.module.js';
import { LiftFacts } from '../custody/lift-facts.service.js';
import { InspectionFacts } from '../inspections/inspection-facts.service.js';
import { ItemFacts } from '../register/item-facts.service.js';
import { GearFacts } from './gear-facts.service.js';

/** The facts of gear for every part that decides; imports no feature with use cases, so that all of them may import it. */
@Module({
  imports: [CommitmentsModule],
  providers: [AwayFacts, GearFacts, ItemFacts, InspectionFacts, LiftFacts],
  exports: [GearFacts, CommitmentsModule],
})
export class GearFactsModule {}
