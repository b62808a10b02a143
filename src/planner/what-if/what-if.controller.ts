import { Body, Controller, Headers, HttpCode, Param, Post } from '@nestjs/common';
import { IdPipe } from '../../http/id.pipe.js';
import { versionFrom } from '../../http/version.js';
import { ChangeJobDto } from '../../jobs/jobs.dto.js';
import { Roles } from '../../people/access.js';
import { WhatIfView } from './what-if.dto.js';
import { WhatIfService } from './what-if.service.js';

@Controller('api/jobs')
export class WhatIfController {
  constructor(private readonly whatIf: WhatIfService) {}

  /** What a change of the job would do to its gear; changes nothing. Takes and refuses what PATCH does. Other jobs' bookings never change by it. */
  @Roles('storeman', 'manager')
  @Post(':id/what-if')
  @HttpCode(200)
  compare(
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() input: ChangeJobDto,
  ): Promise<WhatIfView> {
    return this.whatIf.whatIf(id, { version: versionFrom(ifMatch), input });
  }
}
