import { Body, Controller, Get, Headers, Param, Patch, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { versionFrom, versionTag } from '../http/version.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { ChangeStoreDto, NewStoreDto, StoreView } from './stores.dto.js';
import { StoresService } from './stores.service.js';

@Controller('api/stores')
export class StoresController {
  constructor(private readonly stores: StoresService) {}

  /** Every store. */
  @SignedIn()
  @Get()
  list(): Promise<StoreView[]> {
    return this.stores.list();
  }

  /** Opens a store. */
  @Roles('manager')
  @Post()
  create(@Me() me: Actor, @Body() input: NewStoreDto): Promise<StoreView> {
    return this.stores.create(me, input);
  }

  /** One store. Its ETag is what a change must name in If-Match. */
  @SignedIn()
  @Get(':id')
  async get(
    @Param('id', IdPipe) id: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StoreView> {
    const store = await this.stores.get(id);
    reply.header('etag', versionTag(store.version));
    return store;
  }

  /** Changes a store. */
  @Roles('manager')
  @Patch(':id')
  async edit(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() input: ChangeStoreDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<StoreView> {
    const store = await this.stores.edit(me, id, { version: versionFrom(ifMatch), input });
    reply.header('etag', versionTag(store.version));
    return store;
  }
}
