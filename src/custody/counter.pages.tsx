import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { answerForm, answerPage } from '../http/answer-form.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { FoundFormDto, HandOutDto, ReturnDto } from './booking.dto.js';
import { bringBackPage } from './bring-back.view.js';
import { Counter } from './counter.service.js';
import { handOutPage } from './hand-out.view.js';
import { HandOuts } from './hand-outs.service.js';
import { Returns } from './returns.service.js';

/** The pages at the store's counter. */
@Controller('jobs/:id')
export class CounterPages {
  constructor(
    private readonly counter: Counter,
    private readonly handOuts: HandOuts,
    private readonly returns: Returns,
  ) {}

  @Roles('storeman', 'manager')
  @Get('hand-out')
  async handOutForm(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Query('done') done: string | undefined,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerPage(reply, handOutPage({ me, sheet: await this.counter.sheet(id), done: shortText(done) }));
  }

  @Roles('storeman', 'manager')
  @Post('hand-out')
  async handOut(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { insteadOf, ...form } = readForm(fields);
    await answerForm(
      reply,
      async () => {
        const input = await readInput(HandOutDto, {
          ...form,
          ...(insteadOf !== undefined && { insteadOf: Number(insteadOf) }),
        });
        const { tag } = await this.handOuts.handOut(me, id, input);
        return `/jobs/${id}/hand-out?done=${encodeURIComponent(tag)}`;
      },
      async (problem) =>
        handOutPage({ me, sheet: await this.counter.sheet(id), problem, tag: shortText(form['tag']) }),
    );
  }

  @Roles('storeman', 'manager')
  @Get('bring-back')
  async bringBackForm(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Query('done') done: string | undefined,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerPage(
      reply,
      bringBackPage({ me, sheet: await this.counter.sheet(id), done: shortText(done) }),
    );
  }

  @Roles('storeman', 'manager')
  @Post('bring-back')
  async bringBack(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => {
        const { tag } = await this.returns.bringBack(me, id, await readInput(ReturnDto, form));
        return `/jobs/${id}/bring-back?done=${encodeURIComponent(tag)}`;
      },
      async (problem) => bringBackPage({ me, sheet: await this.counter.sheet(id), problem, form }),
    );
  }

  @Roles('storeman', 'manager')
  @Post('found')
  async found(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        const { itemId } = await readInput(FoundFormDto, readForm(fields));
        await this.returns.found(me, itemId);
        return `/jobs/${id}/bring-back`;
      },
      async (problem) => bringBackPage({ me, sheet: await this.counter.sheet(id), problem }),
    );
  }
}

/** What a page may show again of an address or a form: text, and not much of it. */
function shortText(value: unknown): string | undefined {
  return typeof value === 'string' ? value.slice(0, 40) : undefined;
}
