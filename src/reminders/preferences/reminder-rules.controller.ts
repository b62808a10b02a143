import { Body, Controller, Get, Headers, Param, Patch, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { IdPipe } from '../../http/id.pipe.js';
import { versionFrom, versionTag } from '../../http/version.js';
import { Me, Roles, SignedIn } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { ChangeReminderRuleDto, ReminderRuleView } from './reminder-rules.dto.js';
import { ReminderRules, type StoreReminderRule } from './reminder-rules.service.js';

@Controller('api/stores/:id/reminders')
export class ReminderRulesController {
  constructor(private readonly rules: ReminderRules) {}

  /** When a store works and how early it wants to hear. Its ETag is what a change must name in If-Match. */
  @SignedIn()
  @Get()
  async get(
    @Param('id', IdPipe) id: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ReminderRuleView> {
    return tagged(reply, id, await this.rules.of(id));
  }

  /** Changes when a store hears. */
  @Roles('storeman', 'manager')
  @Patch()
  async change(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() input: ChangeReminderRuleDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<ReminderRuleView> {
    return tagged(reply, id, await this.rules.change(me, id, { version: versionFrom(ifMatch), input }));
  }
}

function tagged(reply: FastifyReply, storeId: number, rule: StoreReminderRule): ReminderRuleView {
  reply.header('etag', versionTag(rule.version));
  return { storeId, ...rule };
}
