import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { CommitmentsModule } from '../custody/commitments.module.js';
import { JobsModule } from '../jobs/jobs.module.js';
import { RegisterModule } from '../register/register.module.js';
import { CheckPages } from './check.pages.js';
import { ChecksController } from './checks.controller.js';
import { ChecksService } from './checks.service.js';
import { CoverageService } from './coverage.service.js';
import { JobChecksPages } from './job-checks.pages.js';
import { PhoneController } from './phone.controller.js';
import { PhoneService } from './phone.service.js';

/** Checks before use: one by one, on a page or on a phone, and how far a job's gear is checked. */
@Module({
  imports: [CatalogueModule, CommitmentsModule, JobsModule, RegisterModule],
  controllers: [ChecksController, CheckPages, JobChecksPages, PhoneController],
  providers: [ChecksService, CoverageService, PhoneService],
  exports: [ChecksService, CoverageService, PhoneService],
})
export class ChecksModule {}
