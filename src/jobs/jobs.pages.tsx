import { Body, Controller, Get, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { IdPipe } from '../http/id.pipe.js';
import { Catalogue } from '../catalogue/catalogue.js';
import { Reservations } from '../custody/reservations.service.js';
import { ReleaseDto } from '../custody/booking.dto.js';
import { answerForm, answerPage } from '../http/answer-form.js';
import { readForm, readInput } from '../http/input.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { readTable } from '../register/import/read-table.js';
import { uploadedFile } from '../register/import/uploaded-file.js';
import { StoresService } from '../stores/stores.service.js';
import { jobChoices, readJobForm, withPastedPanels, type JobChoices, type JobForm } from './job-form.js';
import { jobFormPage } from './job-form.view.js';
import { JobList } from './job-list.service.js';
import { JobSheets } from './job-sheet.service.js';
import { jobSheetPage } from './job-sheet.view.js';
import { EditJobFormDto, JobsQueryDto, JobVersionFormDto, NewJobDto, ScheduleQueryDto } from './jobs.dto.js';
import { JobsService } from './jobs.service.js';
import { PanelSchedules } from './panel-schedules.service.js';
import { jobsPage } from './jobs.view.js';

@Controller('jobs')
export class JobsPages {
  constructor(
    private readonly jobs: JobsService,
    private readonly jobList: JobList,
    private readonly sheets: JobSheets,
    private readonly schedules: PanelSchedules,
    private readonly stores: StoresService,
    private readonly catalogue: Catalogue,
    private readonly reservations: Reservations,
  ) {}

  @SignedIn()
  @Get()
  async list(@Me() me: Actor, @Query() query: JobsQueryDto, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, jobsPage({ me, list: await this.jobList.list(query) }));
  }

  @Roles('storeman', 'manager')
  @Get('new')
  async blank(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    const choices = await this.choices();
    await answerPage(reply, jobFormPage({ me, choices, form: firstForm(choices) }));
  }

  @Roles('storeman', 'manager')
  @Post()
  async create(@Me() me: Actor, @Body() fields: object, @Res() reply: FastifyReply): Promise<void> {
    const form = readJobForm(fields);
    await answerForm(
      reply,
      async () =>
        `/jobs/${(await this.jobs.create(me, await readInput(NewJobDto, withPastedPanels(form)))).id}`,
      async (problem) => jobFormPage({ me, choices: await this.choices(), form, problem }),
    );
  }

  @SignedIn()
  @Get(':id')
  async show(@Me() me: Actor, @Param('id', IdPipe) id: number, @Res() reply: FastifyReply): Promise<void> {
    await answerPage(reply, await this.sheetPage(me, id));
  }

  @Roles('storeman', 'manager')
  @Get(':id/edit')
  async editForm(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const job = await this.jobs.get(id);
    await answerPage(reply, jobFormPage({ me, choices: await this.choices(), form: { ...job }, job }));
  }

  @Roles('storeman', 'manager')
  @Post(':id/edit')
  async edit(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = readJobForm(fields);
    await answerForm(
      reply,
      async () => {
        const { version, ...input } = await readInput(EditJobFormDto, withPastedPanels(form));
        await this.jobs.edit(me, id, { version, input });
        return `/jobs/${id}`;
      },
      async (problem) =>
        jobFormPage({ me, choices: await this.choices(), form, problem, job: await this.jobs.get(id) }),
    );
  }

  @Roles('storeman', 'manager')
  @Post(':id/panels')
  async replacePanels(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Query() { version }: ScheduleQueryDto,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        const { bytes } = await uploadedFile(request);
        await this.schedules.replace(me, id, { version, table: await readTable(bytes) });
        return `/jobs/${id}`;
      },
      async (problem) => {
        const job = await this.jobs.get(id);
        return jobFormPage({ me, choices: await this.choices(), form: { ...job }, problem, job });
      },
    );
  }

  @Roles('storeman', 'manager')
  @Post(':id/cancel')
  async cancel(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        await this.jobs.cancel(me, id, await readInput(JobVersionFormDto, readForm(fields)));
        return `/jobs/${id}`;
      },
      (problem) => this.sheetPage(me, id, problem),
    );
  }

  @Roles('storeman', 'manager')
  @Post(':id/release')
  async release(
    @Me() me: Actor,
    @Param('id', IdPipe) id: number,
    @Body() fields: object,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await answerForm(
      reply,
      async () => {
        const { bookedItemId } = readForm(fields);
        const input = await readInput(ReleaseDto, { bookedItemId: Number(bookedItemId) });
        await this.reservations.release(me, id, input.bookedItemId);
        return `/jobs/${id}`;
      },
      (problem) => this.sheetPage(me, id, problem),
    );
  }

  private async sheetPage(me: Actor, id: number, problem?: Problem): Promise<string> {
    const sources = (key: string) => this.catalogue.source(key).title;
    return jobSheetPage({ me, sheet: await this.sheets.sheet(id), sources, ...(problem && { problem }) });
  }

  private choices(): Promise<JobChoices> {
    return jobChoices(this.stores, this.catalogue);
  }
}

/** What a new job starts from: the first store and its rules, one crew with one lifter and two persons aloft. How the panels are hung is for the planner to say. */
function firstForm({ stores }: JobChoices): JobForm {
  const [store] = stores;
  const counts = { crews: 1, liftersInUse: 1, personsAloft: 2, panelsOnWheels: 1, trucksUnloading: 1 };
  return { storeId: store?.id, scheme: store?.scheme, otherStores: true, counts };
}
