import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { ExaminationReports } from './examination-reports.service.js';
import { ExaminationOutcomeView, ExaminationView, NewExaminationDto } from './examinations.dto.js';
import { ExaminationsService } from './examinations.service.js';

@Controller('api')
export class ExaminationsController {
  constructor(
    private readonly examinations: ExaminationsService,
    private readonly reports: ExaminationReports,
  ) {}

  /**
   * Signs a report of thorough examination with everything that LOLER 1998 Schedule 1 asks for. Your sign-in is the
   * signature. What lacks is refused by its paragraph; the report gets the next number of the year and never changes.
   */
  @Roles('competentPerson')
  @Post('items/:id/examinations')
  sign(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() input: NewExaminationDto,
  ): Promise<ExaminationOutcomeView> {
    return this.examinations.sign(me, id, input);
  }

  /** A report as signed, with its fingerprint and the reports it corrects or is corrected by. */
  @SignedIn()
  @Get('examinations/:id')
  get(@Param('id', IdPipe) id: number): Promise<ExaminationView> {
    return this.reports.get(id);
  }
}
