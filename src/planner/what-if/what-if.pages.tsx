import { Body, Controller, HttpCode, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../../catalogue/catalogue.js';
import { answerQuestion } from '../../http/answer-form.js';
import { IdPipe } from '../../http/id.pipe.js';
import { readInput } from '../../http/input.js';
import { jobChoices, readJobForm, withPastedPanels } from '../../jobs/job-form.js';
import { jobFormPage } from '../../jobs/job-form.view.js';
import { EditJobFormDto } from '../../jobs/jobs.dto.js';
import { JobsService } from '../../jobs/jobs.service.js';
import { Me, Roles } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { StoresService } from '../../stores/stores.service.js';
import { WhatIfService } from './what-if.service.js';
import { WhatIfSheet } from './what-if.view.js';

@Controller('jobs/:id/what-if')
export class WhatIfPages {
  constructor(
    private readonly whatIf: WhatIfService,
    private readonly jobs: JobsService,
    private readonly stores: StoresService,
    private readonly catalogue: Catalogue,
  ) {}

  @Roles('storeman', 'manager')
  @Post()
  @HttpCode(200)
  async look(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readJobForm(fields);
    const [job, choices] = [await this.jobs.get(id), await jobChoices(this.stores, this.catalogue)];
    await answerQuestion(
      reply,
      async () => {
        const { version, ...input } = await readInput(EditJobFormDto, withPastedPanels(form));
        const found = await this.whatIf.whatIf(id, { version, input });
        const preview = <WhatIfSheet found={found} kinds={choices.kinds} />;
        return jobFormPage({ me, choices, form, job, preview });
      },
      (problem) => jobFormPage({ me, choices, form, job, problem }),
    );
  }
}
