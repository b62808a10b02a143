import { Body, Controller, Get, Headers, HttpCode, Param, Patch, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { versionFrom, versionTag } from '../http/version.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { JobList } from './job-list.service.js';
import {
  ChangeJobDto,
  GearChoiceDto,
  JobListView,
  JobsQueryDto,
  JobView,
  NewJobDto,
  PanelsCsvDto,
} from './jobs.dto.js';
import { JobsService } from './jobs.service.js';
import { PanelSchedules, tableOfText } from './panel-schedules.service.js';

@Controller('api/jobs')
export class JobsController {
  constructor(
    private readonly jobs: JobsService,
    private readonly jobList: JobList,
    private readonly schedules: PanelSchedules,
  ) {}

  /** A page of jobs: those still to come back first, then past ones. */
  @SignedIn()
  @Get()
  list(@Query() query: JobsQueryDto): Promise<JobListView> {
    return this.jobList.list(query);
  }

  /** Makes a job. */
  @Roles('storeman', 'manager')
  @Post()
  create(@Me() me: Actor, @Body() input: NewJobDto): Promise<JobView> {
    return this.jobs.create(me, input);
  }

  /** One job. Its ETag is what a change must name in If-Match. */
  @SignedIn()
  @Get(':id')
  async get(
    @Param('id', IdPipe) id: number,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<JobView> {
    return tagged(reply, await this.jobs.get(id));
  }

  /** Changes a job. Booked gear follows to the new days, or the change is refused with what stands in the way. */
  @Roles('storeman', 'manager')
  @Patch(':id')
  async edit(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() input: ChangeJobDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<JobView> {
    return tagged(reply, await this.jobs.edit(me, id, { version: versionFrom(ifMatch), input }));
  }

  /** Replaces the panel schedule by the rows of a CSV text with units in its headings. */
  @Roles('storeman', 'manager')
  @Post(':id/panels-csv')
  @HttpCode(200)
  async replacePanels(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() { csv }: PanelsCsvDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<JobView> {
    return tagged(
      reply,
      await this.schedules.replace(me, id, { version: versionFrom(ifMatch), table: tableOfText(csv) }),
    );
  }

  /** Pins an item to a line, leaves one out, or takes either back. A pin never overrides a refusal. */
  @Roles('storeman', 'manager')
  @Post(':id/choices')
  @HttpCode(200)
  async choose(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Body() input: GearChoiceDto,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<JobView> {
    return tagged(reply, await this.jobs.choose(me, id, { version: versionFrom(ifMatch), input }));
  }

  /** Cancels a job and gives up what is reserved for it. */
  @Roles('storeman', 'manager')
  @Post(':id/cancellation')
  @HttpCode(200)
  async cancel(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Headers('if-match') ifMatch: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<JobView> {
    return tagged(reply, await this.jobs.cancel(me, id, { version: versionFrom(ifMatch) }));
  }
}

function tagged(reply: FastifyReply, job: JobView): JobView {
  reply.header('etag', versionTag(job.version));
  return job;
}
