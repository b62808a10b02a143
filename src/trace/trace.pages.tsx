import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { answerForm, answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { batchAddress } from '../register/item-words.js';
import { batchPage } from './batch.view.js';
import { BatchPipe } from './batch.pipe.js';
import { BatchQuarantineDto, BatchQueryDto } from './batches.dto.js';
import { Batches } from './batches.service.js';
import { gearFilePage } from './gear-file.view.js';
import { GearFiles } from './gear-files.service.js';
import { quarantinePage } from './quarantine.view.js';
import { Quarantine } from './quarantine.service.js';
import { tracePage } from './trace.view.js';
import { Traces } from './traces.service.js';

@Controller()
export class TracePages {
  constructor(
    private readonly traces: Traces,
    private readonly batches: Batches,
    private readonly gearFiles: GearFiles,
    private readonly quarantine: Quarantine,
    private readonly catalogue: Catalogue,
  ) {}

  @SignedIn()
  @Get('quarantine')
  async waiting(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    const waiting = await this.quarantine.list(me);
    await answerPage(reply, quarantinePage({ me, waiting, kinds: this.catalogue.kinds() }));
  }

  @SignedIn()
  @Get('trace/defects/:id')
  async trace(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, tracePage({ me, trace: await this.traces.ofDefect(id) }));
  }

  @SignedIn()
  @Get('trace/batches/:batch')
  async batch(
    @Me() me: Actor,
    @Param('batch', BatchPipe) batch: string,
    @Query() { maker }: BatchQueryDto,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerPage(reply, await this.showBatch(me, { batch, maker }));
  }

  @Roles('storeman', 'competentPerson', 'manager')
  @Post('trace/batches/:batch')
  async quarantineBatch(
    @Me() me: Actor,
    @Param('batch', BatchPipe) batch: string,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    const maker = typeof form['maker'] === 'string' ? form['maker'] : undefined;
    await answerForm(
      reply,
      async () => {
        const input = await readInput(BatchQuarantineDto, form);
        await this.batches.quarantine(me, batch, input);
        return batchAddress(batch, input.maker);
      },
      (problem) => this.showBatch(me, { batch, maker, form, problem }),
    );
  }

  @SignedIn()
  @Get('jobs/:id/gear-file')
  async gearFile(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const file = await this.gearFiles.ofJob(id);
    await answerPage(reply, gearFilePage({ me, file, kinds: this.catalogue.kinds() }));
  }

  private async showBatch(
    me: Actor,
    asked: {
      readonly batch: string;
      readonly maker: string | undefined;
      readonly form?: Readonly<Record<string, unknown>>;
      readonly problem?: Problem;
    },
  ): Promise<string> {
    const found = await this.batches.look(asked.batch, asked.maker);
    return batchPage({ me, found, kinds: this.catalogue.kinds(), form: asked.form, problem: asked.problem });
  }
}
