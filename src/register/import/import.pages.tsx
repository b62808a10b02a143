import { Body, Controller, Get, Param, ParseUUIDPipe, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { answerForm, answerPage } from '../../http/answer-form.js';
import { readForm, readInput } from '../../http/input.js';
import { Me, Roles } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import type { Problem } from '../../problem.js';
import { AcceptImportDto, ImportMappingDto } from './import.dto.js';
import { ImportService } from './import.service.js';
import { importPage, importReportPage } from './import.view.js';
import { sendFile } from './send-file.js';
import { uploadedFile } from './uploaded-file.js';

@Controller('register/import')
export class ImportPages {
  constructor(private readonly imports: ImportService) {}

  @Roles('storeman', 'manager')
  @Get()
  async form(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, importPage({ me }));
  }

  @Roles('storeman', 'manager')
  @Post()
  async upload(@Me() me: Actor, @Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    await answerForm(
      reply,
      async () => {
        const { upload } = await this.imports.dryRun(me, await uploadedFile(request));
        return `/register/import/${upload.id}`;
      },
      (problem) => importPage({ me, problem }),
    );
  }

  @Roles('storeman', 'manager')
  @Get(':uploadId')
  async report(
    @Me() me: Actor,
    @Param('uploadId', ParseUUIDPipe) uploadId: string,
    @Query('taken') taken: string | undefined,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const run = await this.imports.report(me, uploadId);
    const isCount = taken !== undefined && /^\d{1,6}$/.test(taken);
    await answerPage(reply, importReportPage({ me, run, ...(isCount ? { taken: Number(taken) } : {}) }));
  }

  @Roles('storeman', 'manager')
  @Post(':uploadId/mapping')
  async choose(
    @Me() me: Actor,
    @Param('uploadId', ParseUUIDPipe) uploadId: string,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    const { columns } = form;
    await answerForm(
      reply,
      async () => {
        const body = {
          ...form,
          columns: Array.isArray(columns) ? columns : [],
          reportsOnFile: form['reportsOnFile'] === 'true',
        };
        await this.imports.choose(me, uploadId, await readInput(ImportMappingDto, body));
        return `/register/import/${uploadId}`;
      },
      (problem) => this.reportAgain(me, uploadId, problem),
    );
  }

  @Roles('storeman', 'manager')
  @Post(':uploadId/accept')
  async accept(
    @Me() me: Actor,
    @Param('uploadId', ParseUUIDPipe) uploadId: string,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        const { mode } = await readInput(AcceptImportDto, readForm(fields));
        const { taken } = await this.imports.accept(me, uploadId, mode);
        return `/register/import/${uploadId}?taken=${taken}`;
      },
      (problem) => this.reportAgain(me, uploadId, problem),
    );
  }

  @Roles('storeman', 'manager')
  @Get(':uploadId/to-mend.csv')
  async toMend(
    @Me() me: Actor,
    @Param('uploadId', ParseUUIDPipe) uploadId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await sendFile(reply, { ...(await this.imports.faultyRows(me, uploadId)), type: 'text/csv' });
  }

  private async reportAgain(me: Actor, uploadId: string, problem: Problem): Promise<string> {
    return importReportPage({ me, run: await this.imports.report(me, uploadId), problem });
  }
}
