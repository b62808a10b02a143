import { Body, Controller, Get, HttpCode, Param, ParseUUIDPipe, Post, Req, Res } from '@nestjs/common';
import { ApiBody, ApiConsumes } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Me, Roles } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { AcceptImportDto, ImportMappingDto, ImportOutcomeView, ImportReportView } from './import.dto.js';
import { ImportService } from './import.service.js';
import { reportView } from './report-view.js';
import { sendFile } from './send-file.js';
import { uploadedFile } from './uploaded-file.js';

const FILE_BODY = {
  schema: { type: 'object', required: ['file'], properties: { file: { type: 'string', format: 'binary' } } },
};

@Controller('api/register/import')
export class ImportController {
  constructor(private readonly imports: ImportService) {}

  /** Dry run: reads a CSV or XLSX file and says everything wrong with it. Nothing enters the register. */
  @Roles('storeman', 'manager')
  @Post()
  @ApiConsumes('multipart/form-data')
  @ApiBody(FILE_BODY)
  async dryRun(@Me() me: Actor, @Req() request: FastifyRequest): Promise<ImportReportView> {
    return reportView(await this.imports.dryRun(me, await uploadedFile(request)));
  }

  /** The dry run again, against the register as it is now. */
  @Roles('storeman', 'manager')
  @Get(':uploadId')
  async report(
    @Me() me: Actor,
    @Param('uploadId', ParseUUIDPipe) uploadId: string,
  ): Promise<ImportReportView> {
    return reportView(await this.imports.report(me, uploadId));
  }

  /** Says how the file is to be read. Kept for the next file with the same headings. */
  @Roles('storeman', 'manager')
  @Post(':uploadId/mapping')
  @HttpCode(200)
  async choose(
    @Me() me: Actor,
    @Param('uploadId', ParseUUIDPipe) uploadId: string,
    @Body() input: ImportMappingDto,
  ): Promise<ImportReportView> {
    return reportView(await this.imports.choose(me, uploadId, input));
  }

  /** Takes all rows or none, or the sound rows, in one transaction. */
  @Roles('storeman', 'manager')
  @Post(':uploadId/accept')
  @HttpCode(200)
  async accept(
    @Me() me: Actor,
    @Param('uploadId', ParseUUIDPipe) uploadId: string,
    @Body() { mode }: AcceptImportDto,
  ): Promise<ImportOutcomeView> {
    const { mendFile, ...counts } = await this.imports.accept(me, uploadId, mode);
    return { ...counts, ...(mendFile ? { mendFile: `/api/register/import/${uploadId}/to-mend.csv` } : {}) };
  }

  /** The faulty rows as a file to mend. */
  @Roles('storeman', 'manager')
  @Get(':uploadId/to-mend.csv')
  async toMend(
    @Me() me: Actor,
    @Param('uploadId', ParseUUIDPipe) uploadId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await sendFile(reply, { ...(await this.imports.faultyRows(me, uploadId)), type: 'text/csv' });
  }
}
