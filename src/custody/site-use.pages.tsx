import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerForm, answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { Lifts } from './lifts.service.js';
import { Shocks } from './shocks.service.js';
import { JobEventDto, LiftsDto } from './site-use.dto.js';
import { SiteUse } from './site-use.service.js';
import { siteUsePage } from './site-use.view.js';

/** The page on which a crew tells of the use of its gear. */
@Controller('jobs/:id')
export class SiteUsePages {
  constructor(
    private readonly siteUse: SiteUse,
    private readonly lifts: Lifts,
    private readonly shocks: Shocks,
  ) {}

  @SignedIn()
  @Get('use')
  async show(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Query('shocked') shocked: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const number = typeof shocked === 'string' && /^\d{1,4}$/.test(shocked) ? Number(shocked) : undefined;
    await answerPage(reply, siteUsePage({ me, sheet: await this.siteUse.sheet(id), shocked: number }));
  }

  @Roles('crew', 'storeman', 'manager')
  @Post('lifts')
  async count(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { lifts, ...rest } = readForm(fields);
    const form = { ...rest, ...(lifts === undefined ? {} : { lifts: Number(lifts) }) };
    await answerForm(
      reply,
      async () => {
        await this.lifts.count(me, id, await readInput(LiftsDto, form));
        return `/jobs/${id}/use`;
      },
      async (problem) => siteUsePage({ me, sheet: await this.siteUse.sheet(id), form, problem }),
    );
  }

  @SignedIn()
  @Post('events')
  async recordShock(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { itemIds, ...rest } = readForm(fields);
    const form = { ...rest, itemIds: Array.isArray(itemIds) ? itemIds.flat().map(Number) : [] };
    await answerForm(
      reply,
      async () => {
        const { items } = await this.shocks.record(me, id, await readInput(JobEventDto, form));
        return `/jobs/${id}/use?shocked=${items.length}`;
      },
      async (problem) => siteUsePage({ me, sheet: await this.siteUse.sheet(id), form, problem }),
    );
  }
}
