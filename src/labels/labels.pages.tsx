import { Controller, Get, Param, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { answerQuestion } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { StoresService } from '../stores/stores.service.js';
import { labelSheetsPage } from './label-sheets.view.js';
import { LabelQueryDto } from './labels.dto.js';
import { labelsPage } from './labels.view.js';
import { LabelsService, type Chosen } from './labels.service.js';

@Controller()
export class LabelPages {
  constructor(
    private readonly labels: LabelsService,
    private readonly stores: StoresService,
    private readonly catalogue: Catalogue,
  ) {}

  @Roles('storeman', 'manager')
  @Get('labels')
  async choose(
    @Me() me: Actor,
    @Query() fields: object,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    await answerQuestion(
      reply,
      async () => {
        const chosen = await this.labels.choose(await readInput(LabelQueryDto, form));
        return this.page({ me, form, request, chosen });
      },
      (problem) => this.page({ me, form, request, problem }),
    );
  }

  /** Sheets to print, with nothing else on the paper. */
  @Roles('storeman', 'manager')
  @Get('labels/sheets')
  async sheets(
    @Me() me: Actor,
    @Query() fields: object,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    await answerQuestion(
      reply,
      async () => {
        const query = await readInput(LabelQueryDto, form);
        const back = request.url.replace('/labels/sheets', '/labels');
        return labelSheetsPage({ ...(await this.labels.sheets(query, this.baseUrl(request))), back });
      },
      (problem) => this.page({ me, form, request, problem }),
    );
  }

  @Roles('storeman', 'manager')
  @Get('register/:id/label')
  async ofItem(@Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await reply.redirect(`/labels?itemId=${id}`, 303);
  }

  private async page(shown: {
    me: Actor;
    form: Record<string, unknown>;
    request: FastifyRequest;
    chosen?: Chosen;
    problem?: Problem;
  }): Promise<string> {
    const { request, ...props } = shown;
    return labelsPage({ ...props, ...(await this.choices()), baseUrl: this.baseUrl(request) });
  }

  private async choices() {
    return { kinds: this.catalogue.kinds(), stores: await this.stores.list() };
  }

  private baseUrl(request: FastifyRequest): string {
    return this.labels.baseUrl(`${request.protocol}://${request.host}`);
  }
}
