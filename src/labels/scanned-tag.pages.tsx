import { Controller, Get, Param, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { answerPage } from '../http/answer-form.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { whoCarries } from '../register/plate-facts.js';
import { Reads } from '../storage/reads.js';
import { lookAlikesPage } from './look-alikes.view.js';

/** Where the code on a label leads. */
@Controller('t')
export class ScannedTagPages {
  constructor(
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
  ) {}

  @SignedIn()
  @Get(':tag')
  async open(@Me() me: Actor, @Param('tag') tag: string, @Res() reply: FastifyReply): Promise<void> {
    const shown = tag.slice(0, 60);
    const { item, lookAlikes } = await whoCarries(this.reads.manager, tag);
    if (item) {
      await reply.redirect(`/register/${item.id}`, 303);
      return;
    }
    if (lookAlikes.length === 0) {
      throw new Problem(
        'not_found',
        `No item carries the tag '${shown}'. Read it again, or look it up in the register.`,
      );
    }
    reply.status(404);
    const kinds = this.catalogue.kinds();
    await answerPage(reply, lookAlikesPage({ me, tag: shown, lookAlikes, kinds }));
  }
}
