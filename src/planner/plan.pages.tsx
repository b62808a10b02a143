import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { Catalogue } from '../catalogue/catalogue.js';
import { Reservations } from '../custody/reservations.service.js';
import { answerForm, answerPage } from '../http/answer-form.js';
import { readForm, readInput } from '../http/input.js';
import { GearChoiceFormDto, JobVersionFormDto } from '../jobs/jobs.dto.js';
import { JobsService } from '../jobs/jobs.service.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { planPage } from './plan.view.js';
import { PlannerService } from './planner.service.js';

@Controller('jobs/:id/plan')
export class PlanPages {
  constructor(
    private readonly planner: PlannerService,
    private readonly jobs: JobsService,
    private readonly reservations: Reservations,
    private readonly catalogue: Catalogue,
  ) {}

  @SignedIn()
  @Get()
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, await this.page(me, id));
  }

  @Roles('storeman', 'manager')
  @Post('choices')
  async choose(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        const { version, tag, ...choice } = await readInput(GearChoiceFormDto, withNumber(readForm(fields)));
        const itemId = choice.itemId ?? (await this.jobs.itemIdOf(tag ?? ''));
        await this.jobs.choose(me, id, { version, input: { ...choice, itemId } });
        return `/jobs/${id}/plan`;
      },
      (problem) => this.page(me, id, problem),
    );
  }

  @Roles('storeman', 'manager')
  @Post('reservation')
  async reserve(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        await this.reservations.reserve(me, id, await readInput(JobVersionFormDto, readForm(fields)));
        return `/jobs/${id}`;
      },
      (problem) => this.page(me, id, problem),
    );
  }

  private async page(me: Actor, id: number, problem?: Problem): Promise<string> {
    const sources = (key: string) => this.catalogue.source(key).title;
    return planPage({ me, proposal: await this.planner.propose(id), sources, ...(problem && { problem }) });
  }
}

function withNumber({ itemId, ...form }: Record<string, unknown>): Record<string, unknown> {
  return itemId === undefined ? form : { ...form, itemId: Number(itemId) };
}
