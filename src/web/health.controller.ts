import { Controller, Get } from '@nestjs/common';
import { Public } from '../people/access.js';
import { HealthView } from './health.dto.js';
import { Reads } from '../storage/reads.js';

@Controller('health')
export class HealthController {
  constructor(private readonly reads: Reads) {}

  /** Answers when the server is up and its database can be read. */
  @Public()
  @Get()
  async check(): Promise<HealthView> {
    await this.reads.manager.query('SELECT 1');
    return { status: 'ok' };
  }
}
