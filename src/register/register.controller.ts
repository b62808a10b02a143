import { Body, Controller, Get, Headers, Param, Patch, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { versionFrom, versionTag } from '../http/version.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { AskFitnessDto, FitnessView } from './fitness.dto.js';
import { FitnessService } from './fitness.service.js';
import { FindItemsDto, ItemPageView } from './register-search.dto.js';
import { RegisterSearch } from './register-search.service.js';
import { ChangeItemDto, ItemView, NewItemDto } from './register.dto.js';
import { RegisterService } from './register.service.js';

@Controller('api/items')
export class RegisterController {
  constructor(
    private readonly register: RegisterService,
    private readonly search: RegisterSearch,
    private readonly fitness: FitnessService,
  ) {}

  /** Finds items, a page at a time in the order of their tags. */
  @SignedIn()
  @Get()
  find(@Query() query: FindItemsDto): Promise<ItemPageView> {
    return this.search.find(query);
  }

  /** Enters an item in the register. */
  @Roles('storeman', 'manager')
  @Post()
  async create(
    @Me() me: Actor,
    @Body() input: NewItemDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ItemView> {
    const item = await this.register.create(me, input);
    reply.header('etag', versionTag(item.version));
    return item;
  }

  /** One item. Its ETag is what a change must name in If-Match. */
  @SignedIn()
  @Get(':id')
  async get(
    @Param('id', IdPipe) id: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ItemView> {
    const item = await this.register.get(id);
    reply.header('etag', versionTag(item.version));
    return item;
  }

  /** Whether the item by itself is fit for a duty on some days. A job also asks for ratings and sizes. */
  @SignedIn()
  @Get(':id/fitness')
  async askFitness(@Param('id', IdPipe) id: number, @Query() query: AskFitnessDto): Promise<FitnessView> {
    const { verdict, duty, from, to } = await this.fitness.ask(id, query);
    const { fit, refusals, workings, cautions, dueOn } = verdict;
    return {
      fit,
      duty,
      from,
      to,
      refusals,
      workings,
      cautions: [...cautions],
      ...(dueOn === undefined ? {} : { dueOn }),
    };
  }

  /** Changes what is on record of an item. Its condition changes by inspections, quarantine, repair and scrapping only. */
  @Roles('storeman', 'manager')
  @Patch(':id')
  async edit(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() input: ChangeItemDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ItemView> {
    const item = await this.register.edit(me, id, { version: versionFrom(ifMatch), input });
    reply.header('etag', versionTag(item.version));
    return item;
  }
}
