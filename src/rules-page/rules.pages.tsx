import { Controller, Get, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { answerPage } from '../http/answer-form.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { rulesPage } from './rules.view.js';

@Controller('rules')
export class RulesPages {
  constructor(
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
  ) {}

  @SignedIn()
  @Get()
  async show(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(
      reply,
      rulesPage({
        me,
        today: this.clock.today('UTC'),
        kinds: this.catalogue.kinds(),
        schemes: this.catalogue.schemes(),
        methods: this.catalogue.methods(),
        sources: this.catalogue.sources(),
      }),
    );
  }
}
