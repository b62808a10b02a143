import { Body, Controller, Get, HttpCode, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../catalogue/catalogue.js';
import { answerForm, answerPage, answerQuestion } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { RegisterService } from '../register/register.service.js';
import { ExaminationDrafts } from './examination-drafts.service.js';
import { readExaminationForm, type ExaminationForm } from './examination-form.js';
import { examinationFormPage } from './examination-form.view.js';
import { ExaminationPrefill } from './examination-prefill.service.js';
import { ExaminationReports } from './examination-reports.service.js';
import { examinationPage, signingPage } from './examination.view.js';
import { NewExaminationDto } from './examinations.dto.js';
import { ExaminationsService } from './examinations.service.js';
import { ItemRecords } from './item-records.service.js';

/** The way to a signed report: fill in, read through, sign. */
@Controller()
export class ExaminationPages {
  constructor(
    private readonly register: RegisterService,
    private readonly records: ItemRecords,
    private readonly prefill: ExaminationPrefill,
    private readonly drafts: ExaminationDrafts,
    private readonly examinations: ExaminationsService,
    private readonly reports: ExaminationReports,
    private readonly catalogue: Catalogue,
  ) {}

  @Roles('competentPerson')
  @Get('register/:id/examination')
  async form(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Query() query: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = await this.prefill.formFor(me, id, recordNumber(readForm(query)['supersedesId']));
    await answerPage(reply, await this.formPage({ me, id, form }));
  }

  @Roles('competentPerson')
  @HttpCode(200)
  @Post('register/:id/examination/again')
  async again(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerPage(reply, await this.formPage({ me, id, form: readForm(fields) }));
  }

  @Roles('competentPerson')
  @HttpCode(200)
  @Post('register/:id/examination/check')
  async check(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    const item = await this.register.get(id);
    const sources = (key: string) => this.catalogue.source(key).title;
    await answerQuestion(
      reply,
      async () => {
        const input = await readInput(NewExaminationDto, readExaminationForm(fields));
        const prepared = await this.drafts.preview(me, id, input);
        return signingPage({ me, item, form, prepared, sources });
      },
      (problem) => this.formPage({ me, id, form, problem }),
    );
  }

  @Roles('competentPerson')
  @Post('register/:id/examination')
  async sign(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        const input = await readInput(NewExaminationDto, readExaminationForm(fields));
        const { examination } = await this.examinations.sign(me, id, input);
        return `/examinations/${examination.id}`;
      },
      (problem) => this.formPage({ me, id, form: readForm(fields), problem }),
    );
  }

  @SignedIn()
  @Get('examinations/:id')
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    const examination = await this.reports.get(id);
    const item = await this.register.get(examination.itemId);
    const mayCorrect = me.roles.includes('competentPerson') && item.condition !== 'scrapped';
    await answerPage(reply, examinationPage({ me, item, examination, mayCorrect }));
  }

  private async formPage({
    me,
    id,
    form,
    problem,
  }: {
    me: Actor;
    id: number;
    form: ExaminationForm;
    problem?: Problem;
  }): Promise<string> {
    const item = await this.register.get(id);
    const scheme = await this.prefill.schemeOf(item.storeId);
    const mayRelease = item.condition !== 'inService' || (await this.records.hasOpenDefects(id));
    return examinationFormPage({ me, item, scheme, form, mayRelease, problem });
  }
}

function recordNumber(value: unknown): number | undefined {
  return typeof value === 'string' && /^\d{1,9}$/.test(value) ? Number(value) : undefined;
}
