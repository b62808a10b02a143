import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { answerForm, answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { JobsService } from '../jobs/jobs.service.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { RegisterService } from '../register/register.service.js';
import { jobNumber, readCheckForm, type CheckForm } from './check-form.js';
import { checkPage, type CheckPageProps } from './check-form.view.js';
import { NewCheckDto } from './checks.dto.js';
import { ChecksService } from './checks.service.js';
import { CoverageService } from './coverage.service.js';
import { nextUnchecked } from './next-unchecked.js';

/** The check of one item on a plain form: it works without a script, and the moment is ours, not the device's. */
@Controller('register/:id/check')
export class CheckPages {
  constructor(
    private readonly register: RegisterService,
    private readonly jobs: JobsService,
    private readonly checks: ChecksService,
    private readonly coverage: CoverageService,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  @SignedIn()
  @Get()
  async form(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Query() query: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { job, done } = readForm(query);
    const jobId = jobNumber(job);
    const form: CheckForm = { ...(jobId !== undefined && { jobId }), answers: [] };
    await answerPage(reply, checkPage(await this.props(me, id, { form, doneId: jobNumber(done) })));
  }

  @SignedIn()
  @Post()
  async record(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readCheckForm(readForm(fields));
    const props = await this.props(me, id, { form });
    await answerForm(
      reply,
      async () => {
        const made = { ...form, checkedAt: this.clock.now(), offsetMinutes: 0 };
        await this.checks.record(me, id, await readInput(NewCheckDto, made));
        return this.onwards(id, form.jobId);
      },
      (problem) => checkPage({ ...props, problem }),
    );
  }

  /** Where to go after a check: to the next item of the job, or to the item itself. */
  private async onwards(id: number, jobId: number | undefined): Promise<string> {
    if (jobId === undefined) return `/register/${id}`;
    const next = nextUnchecked(await this.coverage.ofJob(jobId), id);
    return next === undefined ? `/jobs/${jobId}/checks` : `/register/${next}/check?job=${jobId}&done=${id}`;
  }

  private async props(
    me: Actor,
    id: number,
    { form, doneId }: { form: CheckForm; doneId?: number | undefined },
  ): Promise<CheckPageProps> {
    const item = await this.register.get(id);
    const job = form.jobId === undefined ? undefined : await this.jobs.get(form.jobId);
    const done = doneId === undefined ? undefined : await this.register.get(doneId);
    return {
      me,
      item,
      kind: this.catalogue.kind(item.kind),
      form,
      ...(job && { job }),
      ...(done && { done }),
    };
  }
}
