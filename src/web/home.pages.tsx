import { Controller, Get, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerPage } from '../http/answer-form.js';
import { JobList } from '../jobs/job-list.service.js';
import { keepsJobs } from '../jobs/job-words.js';
import { NoticesService } from '../notices/notices.service.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { StoresService } from '../stores/stores.service.js';
import { homePage } from './home.view.js';

const JOBS_SHOWN = 12;

@Controller()
export class HomePages {
  constructor(
    private readonly jobs: JobList,
    private readonly stores: StoresService,
    private readonly notices: NoticesService,
  ) {}

  @SignedIn()
  @Get()
  async show(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    const { jobs } = await this.jobs.list({ limit: JOBS_SHOWN });
    const notices = keepsJobs(me) ? await this.notices.open() : [];
    await answerPage(reply, homePage({ me, jobs, stores: await this.stores.list(), notices }));
  }
}
