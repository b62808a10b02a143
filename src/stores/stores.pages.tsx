import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { answerForm, answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { BoardService } from './board.service.js';
import { ChangeStoreFormDto, NewStoreDto } from './stores.dto.js';
import { StoresService } from './stores.service.js';
import { boardPage, storesPage } from './stores.view.js';

@Controller('stores')
export class StoresPages {
  constructor(
    private readonly stores: StoresService,
    private readonly board: BoardService,
    private readonly catalogue: Catalogue,
  ) {}

  @SignedIn()
  @Get()
  async list(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(
      reply,
      storesPage({ me, stores: await this.stores.list(), schemes: this.catalogue.schemes() }),
    );
  }

  @Roles('manager')
  @Post()
  async create(@Me() me: Actor, @Body() fields: object, @Res() reply: FastifyReply): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => `/stores/${(await this.stores.create(me, await readInput(NewStoreDto, form))).id}`,
      async (problem) =>
        storesPage({
          me,
          stores: await this.stores.list(),
          schemes: this.catalogue.schemes(),
          form,
          problem,
        }),
    );
  }

  @SignedIn()
  @Get(':id')
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    const store = await this.stores.get(id);
    const rails = await this.board.rails(store);
    await answerPage(reply, boardPage({ me, store, rails, schemes: this.catalogue.schemes() }));
  }

  @Roles('manager')
  @Post(':id')
  async edit(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => {
        const { version, ...input } = await readInput(ChangeStoreFormDto, form);
        await this.stores.edit(me, id, { version, input });
        return `/stores/${id}`;
      },
      async (problem) => {
        const store = await this.stores.get(id);
        const rails = await this.board.rails(store);
        return boardPage({ me, store, rails, schemes: this.catalogue.schemes(), form, problem });
      },
    );
  }
}
