import { Controller, Get, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { answerPage } from '../http/answer-form.js';
import { JobList } from '../jobs/job-list.service.js';
import { keepsJobs } from '../jobs/job-words.js';
import { NoticesService } from '../notices/notices.service.js';
import { Me, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { MailChoices } from '../reminders/preferences/mail-choices.service.js';
import { wantsAddress } from '../reminders/preferences/mail-person.js';
import { MailWarnings } from '../reminders/preferences/mail-warnings.service.js';
import { SETTINGS, type Settings } from '../settings.js';
import { StoresService } from '../stores/stores.service.js';
import { homePage } from './home.view.js';

const JOBS_SHOWN = 12;

@Controller()
export class HomePages {
  constructor(
    private readonly jobs: JobList,
    private readonly stores: StoresService,
    private readonly notices: NoticesService,
    private readonly choices: MailChoices,
    private readonly warnings: MailWarnings,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  @SignedIn()
  @Get()
  async show(@Me() me: Actor, @Res() reply: FastifyReply): Promise<void> {
    const { jobs } = await this.jobs.list({ limit: JOBS_SHOWN });
    const notices = keepsJobs(me) ? await this.notices.open() : [];
    const mail = {
      warnings: me.roles.includes('manager') ? await this.warnings.list() : [],
      wantsAddress: (await this.choices.people()).some((one) => one.personId === me.id && wantsAddress(one)),
    };
    await answerPage(
      reply,
      homePage({ me, jobs, stores: await this.stores.list(), notices, mail, demo: this.settings.demo }),
    );
  }
}
