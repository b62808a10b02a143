import { Module } from '@nestjs/common';
import { RegisterModule } from '../register/register.module.js';
import { DocumentFiles } from './document-files.js';
import { DocumentsController } from './documents.controller.js';
import { DocumentPages } from './documents.pages.js';
import { DocumentsService } from './documents.service.js';

/** Photos and certificates of items. */
@Module({
  imports: [RegisterModule],
  controllers: [DocumentsController, DocumentPages],
  providers: [DocumentFiles, DocumentsService],
  exports: [DocumentsService],
})
export class DocumentsModule {}
