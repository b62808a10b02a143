import { Body, Controller, Get, HttpCode, Param, Post, Query } from '@nestjs/common';
import { IdPipe } from '../http/id.pipe.js';
import { Me, Roles, SignedIn } from '../people/access.js';
import type { Actor } from '../people/actor.js';
import { BatchPipe } from './batch.pipe.js';
import { BatchOutcomeView, BatchQuarantineDto, BatchQueryDto, BatchView } from './batches.dto.js';
import { Batches } from './batches.service.js';
import { GearFileView } from './gear-file.dto.js';
import { GearFiles } from './gear-files.service.js';
import { WaitingItemView } from './quarantine.dto.js';
import { Quarantine } from './quarantine.service.js';
import { DefectTraceView } from './trace.dto.js';
import { Traces } from './traces.service.js';

@Controller('api')
export class TraceController {
  constructor(
    private readonly traces: Traces,
    private readonly batches: Batches,
    private readonly gearFiles: GearFiles,
    private readonly quarantine: Quarantine,
  ) {}

  /** Everything in quarantine or under repair, and what it waits for and for whom. */
  @SignedIn()
  @Get('quarantine')
  waiting(@Me() me: Actor): Promise<WaitingItemView[]> {
    return this.quarantine.list(me);
  }

  /** From a defect back to the last good inspection: every job, day and person in between. */
  @SignedIn()
  @Get('defects/:id/trace')
  trace(@Param('id', IdPipe) id: number): Promise<DefectTraceView> {
    return this.traces.ofDefect(id);
  }

  /** All items of a maker's batch. */
  @SignedIn()
  @Get('trace/batches/:batch')
  batch(@Param('batch', BatchPipe) batch: string, @Query() { maker }: BatchQueryDto): Promise<BatchView> {
    return this.batches.look(batch, maker);
  }

  /** Takes everything of a batch that is in service into quarantine, with one reason. */
  @Roles('storeman', 'competentPerson', 'manager')
  @Post('trace/batches/:batch/quarantine')
  @HttpCode(200)
  quarantineBatch(
    @Me() me: Actor,
    @Param('batch', BatchPipe) batch: string,
    @Body() input: BatchQuarantineDto,
  ): Promise<BatchOutcomeView> {
    return this.batches.quarantine(me, batch, input);
  }

  /** The complete file of a job's gear. */
  @SignedIn()
  @Get('jobs/:id/gear-file')
  gearFile(@Param('id', IdPipe) id: number): Promise<GearFileView> {
    return this.gearFiles.ofJob(id);
  }
}
