import { Controller, Get, Param, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../../catalogue/catalogue.js';
import { answerPage } from '../../http/answer-form.js';
import { IdPipe } from '../../http/id.pipe.js';
import { Me, SignedIn } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { calculationPage, keptCalculationPage } from './calculation.view.js';
import { Calculations } from './calculations.service.js';

@Controller('jobs/:id/calculation')
export class CalculationPages {
  constructor(
    private readonly calculations: Calculations,
    private readonly catalogue: Catalogue,
  ) {}

  @SignedIn()
  @Get()
  async current(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    const calculation = await this.calculations.current(id);
    await answerPage(reply, calculationPage({ me, calculation, sources: this.sources }));
  }

  @SignedIn()
  @Get(':sheetId')
  async kept(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Param('sheetId', IdPipe) sheetId: number,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const kept = await this.calculations.kept(id, sheetId);
    await answerPage(reply, keptCalculationPage({ me, kept, sources: this.sources }));
  }

  private readonly sources = (key: string): string => this.catalogue.source(key).title;
}
