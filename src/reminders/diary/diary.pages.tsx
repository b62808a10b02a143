import { Controller, Get, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Catalogue } from '../../catalogue/catalogue.js';
import { answerPage } from '../../http/answer-form.js';
import { readForm, readInput } from '../../http/input.js';
import { Me, SignedIn } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { mailWarning } from '../../web/sentences/mail-warning.js';
import { MailWarnings } from '../preferences/mail-warnings.service.js';
import { DiaryQueryDto } from './diary.dto.js';
import { DiaryOverview } from './diary-overview.service.js';
import { diaryPage } from './diary.view.js';

@Controller('diary')
export class DiaryPages {
  constructor(
    private readonly overview: DiaryOverview,
    private readonly catalogue: Catalogue,
    private readonly mailWarnings: MailWarnings,
  ) {}

  @SignedIn()
  @Get()
  async show(@Me() me: Actor, @Query() fields: object, @Res() reply: FastifyReply): Promise<void> {
    const overview = await this.overview.read(await readInput(DiaryQueryDto, readForm(fields)));
    const warnings = (await this.mailWarnings.list()).map(mailWarning);
    await answerPage(reply, diaryPage({ me, overview, kinds: this.catalogue.kinds(), warnings }));
  }
}
