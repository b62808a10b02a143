import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { StoresModule } from '../../stores/stores.module.js';
import { ExportController } from './export.controller.js';
import { ExportService } from './export.service.js';

@Module({
  imports: [CatalogueModule, StoresModule],
  controllers: [ExportController],
  providers: [ExportService],
  exports: [ExportService],
})
export class ExportModule {}
