import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Clock } from '../../clock.js';
import { answerForm, answerPage } from '../../http/answer-form.js';
import { IdPipe } from '../../http/id.pipe.js';
import { readForm, readInput } from '../../http/input.js';
import { Me, Roles } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { StoresService } from '../../stores/stores.service.js';
import { ReminderRuleFormDto } from './reminder-rules.dto.js';
import { ReminderRules } from './reminder-rules.service.js';
import { reminderRulePage, type TypedRule } from './reminder-rules.view.js';
import { ruleExample } from './rule-example.js';
import { ruleFields } from './rule-form.js';

@Controller('stores/:id/reminders')
export class ReminderRulesPages {
  constructor(
    private readonly rules: ReminderRules,
    private readonly stores: StoresService,
    private readonly clock: Clock,
  ) {}

  @Roles('storeman', 'manager')
  @Get()
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, await this.page(me, id));
  }

  @Roles('storeman', 'manager')
  @Post()
  async change(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readForm(fields);
    await answerForm(
      reply,
      async () => {
        const { version, ...input } = await readInput(ReminderRuleFormDto, ruleFields(form));
        await this.rules.change(me, id, { version, input });
        return `/stores/${id}/reminders`;
      },
      (problem) => this.page(me, id, { form, problem }),
    );
  }

  private async page(me: Actor, id: number, typed?: TypedRule): Promise<string> {
    const store = await this.stores.get(id);
    const rule = await this.rules.of(id);
    const example = ruleExample(rule, this.clock.today(store.timeZone));
    return reminderRulePage({ me, store, rule, example, ...typed });
  }
}
