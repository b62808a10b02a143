import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { answerForm, answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { StoresService } from '../stores/stores.service.js';
import { readChangedItemForm, readNewItemForm } from './item-form.js';
import { chooseKindPage, editItemPage, newItemPage } from './item-form.view.js';
import { FindItemsDto } from './register-search.dto.js';
import { RegisterSearch } from './register-search.service.js';
import { ChangeItemFormDto, NewItemDto } from './register.dto.js';
import { RegisterService } from './register.service.js';
import { registerPage } from './register.view.js';

@Controller('register')
export class RegisterPages {
  constructor(
    private readonly register: RegisterService,
    private readonly search: RegisterSearch,
    private readonly stores: StoresService,
    private readonly catalogue: Catalogue,
  ) {}

  @SignedIn()
  @Get()
  async find(@Me() me: Actor, @Query() fields: object, @Res() reply: FastifyReply): Promise<void> {
    const query = await readInput(FindItemsDto, readForm(fields));
    const found = await this.search.find(query);
    const stores = await this.stores.list();
    await answerPage(reply, registerPage({ me, query, found, stores, kinds: this.catalogue.kinds() }));
  }

  @Roles('storeman', 'manager')
  @Get('new')
  async newForm(@Me() me: Actor, @Query('kind') kind: unknown, @Res() reply: FastifyReply): Promise<void> {
    if (kind === undefined) return answerPage(reply, chooseKindPage({ me, kinds: this.catalogue.kinds() }));
    const [definition, stores] = [this.kind(kind), await this.stores.list()];
    await answerPage(reply, newItemPage({ me, kind: definition, stores, form: {} }));
  }

  @Roles('storeman', 'manager')
  @Post('new')
  async create(@Me() me: Actor, @Body() fields: object, @Res() reply: FastifyReply): Promise<void> {
    const form = readNewItemForm(fields);
    const kind = this.kind(form['kind']);
    await answerForm(
      reply,
      async () => `/register/${(await this.register.create(me, await readInput(NewItemDto, form))).id}`,
      async (problem) => newItemPage({ me, kind, stores: await this.stores.list(), form, problem }),
    );
  }

  @Roles('storeman', 'manager')
  @Get(':id/edit')
  async editForm(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const item = await this.register.get(id);
    const [kind, stores] = [this.kind(item.kind), await this.stores.list()];
    const form = { ...item, serialUnknown: item.serial === null };
    await answerPage(reply, editItemPage({ me, id, tag: item.tag, kind, stores, form }));
  }

  @Roles('storeman', 'manager')
  @Post(':id/edit')
  async edit(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readChangedItemForm(fields);
    const { tag, kind: itemKind } = await this.register.get(id);
    await answerForm(
      reply,
      async () => {
        const { version, ...input } = await readInput(ChangeItemFormDto, form);
        await this.register.edit(me, id, { version, input });
        return `/register/${id}`;
      },
      async (problem) =>
        editItemPage({
          me,
          id,
          tag,
          kind: this.kind(itemKind),
          stores: await this.stores.list(),
          form,
          problem,
        }),
    );
  }

  private kind(key: unknown): KindDefinition {
    const kind = this.catalogue.kinds().find((entry) => entry.kind === key);
    if (!kind) throw new Problem('not_found', 'There is no such kind of gear.');
    return kind;
  }
}
