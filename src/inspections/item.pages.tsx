import { Controller, Get, Param, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { sourceTitle } from '../catalogue/source-title.js';
import { answerPage } from '../http/answer-form.js';
import { DocumentsService } from '../documents/documents.service.js';
import { IdPipe } from '../http/id.pipe.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { FitnessService } from '../register/fitness.service.js';
import { RegisterService } from '../register/register.service.js';
import { ItemRecords } from './item-records.service.js';
import { itemPage } from './item.view.js';

@Controller('register/:id')
export class ItemPages {
  constructor(
    private readonly register: RegisterService,
    private readonly records: ItemRecords,
    private readonly fitness: FitnessService,
    private readonly catalogue: Catalogue,
    private readonly documents: DocumentsService,
  ) {}

  @SignedIn()
  @Get()
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    const item = await this.register.get(id);
    const { verdict, standing } = await this.fitness.ask(id);
    const sources = new Map(this.catalogue.sources().map((source) => [source.key, sourceTitle(source)]));
    const html = itemPage({
      me,
      item,
      verdict,
      standing,
      kind: this.fitness.kindOf(item.kind),
      inspections: await this.records.inspections(id),
      defects: await this.records.defects(id),
      events: await this.records.events(id),
      documents: await this.documents.ofItem(id),
      history: await this.records.history(id),
      sources: (key) => sources.get(key) ?? key,
    });
    await answerPage(reply, html);
  }
}
