import { Controller, Get, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Roles } from '../../people/access.js';
import { sendFile } from '../import/send-file.js';
import { ExportService } from './export.service.js';

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

@Controller()
export class ExportController {
  constructor(private readonly exports: ExportService) {}

  /** The whole register as CSV, to read elsewhere or to hand over to the import again. */
  @Roles('storeman', 'manager')
  @Get(['api/register/export.csv', 'register/export.csv'])
  async csv(@Res() reply: FastifyReply): Promise<void> {
    await sendFile(reply, {
      fileName: 'register.csv',
      bytes: await this.exports.csv(),
      type: 'text/csv; charset=utf-8',
    });
  }

  /** The whole register as XLSX. */
  @Roles('storeman', 'manager')
  @Get(['api/register/export.xlsx', 'register/export.xlsx'])
  async xlsx(@Res() reply: FastifyReply): Promise<void> {
    await sendFile(reply, { fileName: 'register.xlsx', bytes: await this.exports.xlsx(), type: XLSX });
  }
}
