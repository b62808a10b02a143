import { Controller, Get, Param } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { SignedIn } from '../people/access.js';
import { ProposalView } from './planner.dto.js';
import { PlannerService } from './planner.service.js';

@Controller('api/jobs')
export class PlannerController {
  constructor(private readonly planner: PlannerService) {}

  /** Which gear the job should take, line by line, with every refusal and what would cure a shortfall. A planning aid only. */
  @SignedIn()
  @Get(':id/proposal')
  async propose(@Param('id', IdPipe) id: number): Promise<ProposalView> {
    const { job, plan, ruling, today } = await this.planner.propose(id);
    return {
      jobId: job.id,
      jobVersion: job.version,
      today,
      lines: plan.lines,
      transports: plan.transports,
      unmetPins: plan.unmetPins,
      massWorkings: ruling.workings,
    };
  }
}
