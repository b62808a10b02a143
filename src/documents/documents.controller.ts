import { Controller, Get, Param, Post, Req } from '@nestjs/common';
import { ApiBody, ApiConsumes } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { receivedForm, TakesFile } from '../http/received-form.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { DOCUMENT_KINDS, LARGEST_DOCUMENT_BYTES } from './document-kind.js';
import { DocumentView } from './documents.dto.js';
import { DocumentsService } from './documents.service.js';

const FORM = {
  schema: {
    type: 'object',
    required: ['kind', 'file'],
    properties: {
      kind: { type: 'string', enum: [...DOCUMENT_KINDS] },
      inspectionId: { type: 'integer' },
      defectId: { type: 'integer' },
      file: { type: 'string', format: 'binary' },
    },
  },
};

@Controller('api/items/:id/documents')
export class DocumentsController {
  constructor(private readonly documents: DocumentsService) {}

  /** The photos and certificates of the item, newest first. */
  @SignedIn()
  @Get()
  list(@Param('id', IdPipe) id: number): Promise<DocumentView[]> {
    return this.documents.ofItem(id);
  }

  /**
   * Adds a photo (JPEG, PNG or WebP) or a certificate (PDF, JPEG or PNG) of at most 10 MB. Everyone may add photos;
   * certificates a storeman, a competent person or a manager. The same file for the same thing is kept once.
   */
  @SignedIn()
  @Post()
  @TakesFile(LARGEST_DOCUMENT_BYTES)
  @ApiConsumes('multipart/form-data')
  @ApiBody(FORM)
  async add(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Req() request: FastifyRequest,
  ): Promise<DocumentView> {
    return this.documents.add(me, id, await receivedForm(request, LARGEST_DOCUMENT_BYTES));
  }
}
