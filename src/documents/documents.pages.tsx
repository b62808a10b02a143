import { Controller, Get, Param, Post, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { answerForm, answerPage } from '../http/answer-form.js';
import { contentDisposition } from '../http/content-disposition.js';
import { IdPipe } from '../http/id.pipe.js';
import { receivedForm, TakesFile } from '../http/received-form.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { RegisterService } from '../register/register.service.js';
import { DocumentFiles } from './document-files.js';
import { LARGEST_DOCUMENT_BYTES } from './document-kind.js';
import { documentsPage } from './documents-page.view.js';
import { DocumentsService } from './documents.service.js';

/** What a sent file may do in a browser: nothing at all, whatever it turns out to be. */
const NOTHING_ALLOWED = "default-src 'none'; sandbox; frame-ancestors 'none'";

@Controller()
export class DocumentPages {
  constructor(
    private readonly documents: DocumentsService,
    private readonly files: DocumentFiles,
    private readonly register: RegisterService,
  ) {}

  @SignedIn()
  @Get('register/:id/documents')
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, await this.page(me, id));
  }

  @SignedIn()
  @Post('register/:id/documents')
  @TakesFile(LARGEST_DOCUMENT_BYTES)
  async add(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        await this.documents.add(me, id, await receivedForm(request, LARGEST_DOCUMENT_BYTES));
        return `/register/${id}#documents`;
      },
      (problem) => this.page(me, id, problem),
    );
  }

  /** Images open in the browser; a PDF is saved, since browsers do not open one that may run nothing. */
  @SignedIn()
  @Get('documents/:id')
  async send(
    @Param('id', IdPipe) id: number,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { sha256, mediaType, name } = await this.documents.get(id);
    const etag = `"${sha256}"`;
    reply
      .header('etag', etag)
      .header('cache-control', 'private, no-cache')
      .header('content-security-policy', NOTHING_ALLOWED)
      .header('x-content-type-options', 'nosniff');
    if (request.headers['if-none-match'] === etag) {
      await reply.status(304).send();
      return;
    }
    const sizeBytes = await this.files.sizeOf(sha256);
    if (sizeBytes === undefined) {
      throw new Problem('not_found', 'The file is missing from the data folder: restore it from the backup.');
    }
    const shown = mediaType.startsWith('image/') ? 'inline' : 'attachment';
    await reply
      .type(mediaType)
      .header('content-disposition', contentDisposition(shown, name))
      .header('content-length', sizeBytes)
      .send(this.files.read(sha256));
  }

  private async page(me: Actor, id: number, problem?: Problem): Promise<string> {
    const { tag } = await this.register.get(id);
    const documents = await this.documents.ofItem(id);
    const records = await this.documents.recordsOf(id);
    return documentsPage({ me, item: { id, tag }, documents, records, ...(problem ? { problem } : {}) });
  }
}
