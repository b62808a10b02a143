import { Controller, Get, Param, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { JobsService } from '../jobs/jobs.service.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { toDay } from '../rules/calendar/day.js';
import { CoverageQueryDto } from './checks.dto.js';
import { CoverageService } from './coverage.service.js';
import { jobChecksPage } from './job-checks.view.js';

@Controller('jobs/:id/checks')
export class JobChecksPages {
  constructor(
    private readonly jobs: JobsService,
    private readonly coverage: CoverageService,
  ) {}

  @SignedIn()
  @Get()
  async show(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Query() { day }: CoverageQueryDto,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const job = await this.jobs.get(id);
    const coverage = await this.coverage.ofJob(id, day === undefined ? undefined : toDay(day));
    await answerPage(reply, jobChecksPage({ me, job, coverage }));
  }
}
