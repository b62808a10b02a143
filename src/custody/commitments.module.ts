import { Module } from '@nestjs/common';
import { CommitmentsService } from './commitments.service.js';

/** Which items are promised to which jobs, for every part that asks; needs no other module. */
@Module({ providers: [CommitmentsService], exports: [CommitmentsService] })
export class CommitmentsModule {}
