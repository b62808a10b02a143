import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerForm, answerPage } from '../http/answer-form.js';
import { IdPipe } from '../http/id.pipe.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { RegisterService } from '../register/register.service.js';
import { DefectsService } from './defects.service.js';
import {
  defectPage,
  eventPage,
  quarantinePage,
  repairPage,
  scrapPage,
  type ItemFormProps,
} from './forms.view.js';
import { NewDefectDto, NewEventDto, ReasonDto, ScrapDto } from './inspections.dto.js';

/** What a form of these pages needs to be shown or answered. */
interface Visit {
  readonly me: Actor;
  readonly id: number;
  readonly reply: FastifyReply;
}

type Show = (props: ItemFormProps) => string;

/** The forms about what goes wrong with an item. All of them end on the item's page. */
@Controller('register/:id')
export class DefectPages {
  constructor(
    private readonly register: RegisterService,
    private readonly defects: DefectsService,
  ) {}

  @SignedIn()
  @Get('defect')
  defectForm(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    return this.show({ me, id, reply }, defectPage);
  }

  @SignedIn()
  @Post('defect')
  reportDefect(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ) {
    return this.answer({ me, id, reply }, { fields, show: defectPage }, async (form) =>
      this.defects.reportDefect(me, id, await readInput(NewDefectDto, form)),
    );
  }

  @SignedIn()
  @Get('event')
  eventForm(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    return this.show({ me, id, reply }, eventPage);
  }

  @SignedIn()
  @Post('event')
  recordEvent(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ) {
    return this.answer({ me, id, reply }, { fields, show: eventPage }, async (form) =>
      this.defects.recordEvent(me, id, await readInput(NewEventDto, form)),
    );
  }

  @SignedIn()
  @Get('quarantine')
  quarantineForm(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    return this.show({ me, id, reply }, quarantinePage);
  }

  @SignedIn()
  @Post('quarantine')
  quarantine(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ) {
    return this.answer({ me, id, reply }, { fields, show: quarantinePage }, async (form) =>
      this.defects.quarantine(me, id, (await readInput(ReasonDto, form)).reason),
    );
  }

  @Roles('storeman', 'competentPerson', 'manager')
  @Get('repair')
  repairForm(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    return this.show({ me, id, reply }, repairPage);
  }

  @Roles('storeman', 'competentPerson', 'manager')
  @Post('repair')
  startRepair(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ) {
    return this.answer({ me, id, reply }, { fields, show: repairPage }, async (form) =>
      this.defects.startRepair(me, id, (await readInput(ReasonDto, form)).reason),
    );
  }

  @Roles('competentPerson', 'manager')
  @Get('scrap')
  scrapForm(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    return this.show({ me, id, reply }, scrapPage);
  }

  @Roles('competentPerson', 'manager')
  @Post('scrap')
  scrap(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ) {
    return this.answer({ me, id, reply }, { fields, show: scrapPage }, async (form) =>
      this.defects.scrap(me, id, await readInput(ScrapDto, form)),
    );
  }

  private async show({ me, id, reply }: Visit, show: Show): Promise<void> {
    await answerPage(reply, show({ me, item: await this.register.get(id), form: {} }));
  }

  private async answer(
    { me, id, reply }: Visit,
    { fields, show }: { fields: object; show: Show },
    work: (form: Record<string, unknown>) => Promise<unknown>,
  ): Promise<void> {
    const form = readForm(fields);
    const item = await this.register.get(id);
    await answerForm(
      reply,
      async () => {
        await work(form);
        return `/register/${id}`;
      },
      (problem) => show({ me, item, form, problem }),
    );
  }
}
