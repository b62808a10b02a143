import { Module } from '@nestjs/common';
import { CatalogueModule } from '../catalogue/catalogue.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { LabelPages } from './labels.pages.js';
import { LabelsService } from './labels.service.js';
import { ScannedTagPages } from './scanned-tag.pages.js';

/** Labels with QR codes, and the addresses that the codes lead to. */
@Module({
  imports: [CatalogueModule, StoresModule],
  controllers: [LabelPages, ScannedTagPages],
  providers: [LabelsService],
})
export class LabelsModule {}
