import { Body, Controller, Get, Headers, Param, Patch, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { IdPipe } from '../../http/id.pipe.js';
import { versionFrom, versionTag } from '../../http/version.js';
import { Me, SignedIn } from '../../people/access.js';
import type { Actor } from '../../people/actor.js';
import { ChangeMailChoiceDto, MailChoiceView } from './mail-choices.dto.js';
import { MailChoices } from './mail-choices.service.js';
import type { MailPerson } from './mail-person.js';

@Controller('api/people/:id/mail')
export class MailChoicesController {
  constructor(private readonly choices: MailChoices) {}

  /** What a person hears by mail, for that person or a manager. Its ETag is what a change must name in If-Match. */
  @SignedIn()
  @Get()
  async get(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<MailChoiceView> {
    return tagged(reply, await this.choices.of(me, id));
  }

  /** Changes what a person hears by mail, by that person or a manager. Refused when overdue gear would go unheard. */
  @SignedIn()
  @Patch()
  async change(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() input: ChangeMailChoiceDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<MailChoiceView> {
    return tagged(reply, await this.choices.change(me, id, { version: versionFrom(ifMatch), input }));
  }
}

function tagged(reply: FastifyReply, person: MailPerson): MailChoiceView {
  const { personId, name, address, digest, urgent, storeIds, version } = person;
  reply.header('etag', versionTag(version));
  return { personId, name, address, digest, urgent, storeIds, version };
}
