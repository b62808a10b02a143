import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerForm, answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { RegisterService } from '../register/register.service.js';
import { inspectionPage } from './inspection-form.view.js';
import { NewInspectionDto } from './inspections.dto.js';
import { InspectionsService } from './inspections.service.js';
import { ItemRecords } from './item-records.service.js';

@Controller('register/:id/inspection')
export class InspectionPages {
  constructor(
    private readonly register: RegisterService,
    private readonly inspections: InspectionsService,
    private readonly records: ItemRecords,
  ) {}

  @Roles('competentPerson', 'storeman', 'manager')
  @Get()
  async form(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Query() query: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const item = await this.register.get(id);
    const hasOpenDefects = await this.records.hasOpenDefects(id);
    const asked = readForm(query);
    const form = { ...(await this.earlier(id, asked['supersedesId'])), ...asked };
    await answerPage(reply, inspectionPage({ me, item, hasOpenDefects, form }));
  }

  @SignedIn()
  @Post()
  async record(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readInspectionForm(fields);
    const item = await this.register.get(id);
    await answerForm(
      reply,
      async () => {
        await this.inspections.record(me, id, await readInput(NewInspectionDto, form));
        return `/register/${id}`;
      },
      async (problem) => {
        const hasOpenDefects = await this.records.hasOpenDefects(id);
        return inspectionPage({
          me,
          item,
          hasOpenDefects,
          form: { ...readForm(fields), release: form['release'] },
          problem,
        });
      },
    );
  }

  /** What a record to be corrected says, as fields: what is not wrong in it need not be written again. */
  private async earlier(itemId: number, recordId: unknown): Promise<Record<string, unknown>> {
    const records = await this.records.inspections(itemId);
    const record = records.find(({ id }) => String(id) === recordId);
    if (!record) return {};
    const { type, doneOn, outcome, nextDueOn, doneBy, reportNumber, remarks } = record;
    return { type, doneOn, outcome, nextDueOn, doneBy, reportNumber, remarks };
  }
}

function readInspectionForm(fields: object): Record<string, unknown> {
  const form = readForm(fields);
  return {
    ...form,
    release: form['release'] === 'true',
    ...(form['supersedesId'] === undefined ? {} : { supersedesId: Number(form['supersedesId']) }),
  };
}
