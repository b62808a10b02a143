import { Module } from '@nestjs/common';
import { CatalogueModule } from '../../catalogue/catalogue.module.js';
import { StoresModule } from '../../stores/stores.module.js';
import { ImportController } from './import.controller.js';
import { ImportPages } from './import.pages.js';
import { ImportService } from './import.service.js';
import { KeptMappings } from './kept-mappings.service.js';
import { Uploads } from './uploads.service.js';

@Module({
  imports: [CatalogueModule, StoresModule],
  controllers: [ImportController, ImportPages],
  providers: [ImportService, KeptMappings, Uploads],
  exports: [ImportService],
})
export class ImportModule {}
