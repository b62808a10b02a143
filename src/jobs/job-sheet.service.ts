import { Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import type { CoverageView } from '../checks/coverage.dto.js';
import { CoverageService } from '../checks/coverage.service.js';
import type { BookingView } from '../custody/booking.dto.js';
import { BookingFlags } from '../custody/flags.service.js';
import { SiteUse, type SiteUseSheet } from '../custody/site-use.service.js';
import type { GearLine } from '../rules/lines/need.js';
import { panelMass, type RulingPanels } from '../rules/panels/panel-mass.js';
import { jobProgramme } from './calculation/job-programme.js';
import { programmeWarnings } from './calculation/programme-words.js';
import { requireLines } from './job-lines.js';
import type { PanelRow } from './job-parts.js';
import { jobState } from './job-state.js';
import type { JobState, JobView } from './jobs.dto.js';
import { JobsService } from './jobs.service.js';

/** A panel of the schedule with its masses in kg as decimal text. */
export interface WeighedPanel {
  readonly panel: PanelRow;
  readonly massKg: string;
  readonly packedKg: string;
}

/** Everything the sheet of a job shows. */
export interface JobSheet {
  readonly job: JobView;
  readonly methodName: string;
  readonly schemeName: string;
  readonly panels: readonly WeighedPanel[];
  readonly lines: readonly GearLine[];
  readonly ruling: RulingPanels;
  readonly booking: BookingView;
  readonly state: JobState;
  readonly booked: number;
  readonly use: SiteUseSheet;
  /** What of the programme cannot go as planned. */
  readonly programmeWarnings: readonly string[];
  /** How far its gear is checked today. */
  readonly coverage: CoverageView;
}

/** Gathers what the sheet of a job shows. */
@Injectable()
export class JobSheets {
  constructor(
    private readonly jobs: JobsService,
    private readonly flags: BookingFlags,
    private readonly siteUse: SiteUse,
    private readonly catalogue: Catalogue,
    private readonly coverage: CoverageService,
  ) {}

  /** @throws Problem `not_found`. */
  async sheet(id: number): Promise<JobSheet> {
    const job = await this.jobs.get(id);
    const method = this.catalogue.method(job.method);
    const { lines, ruling } = requireLines(await this.jobs.facts(id), this.catalogue);
    const programme = jobProgramme(job, method);
    const booking = await this.flags.booking(id);
    return {
      job,
      methodName: method.name,
      schemeName: this.catalogue.scheme(job.scheme).name,
      panels: job.panels.map((panel) => {
        const { massKg, packedKg } = panelMass(panel, method.estimateMargin);
        return { panel, massKg: massKg.toString(), packedKg: packedKg.toString() };
      }),
      lines,
      ruling,
      programmeWarnings: programme?.ok ? programmeWarnings(programme.figures) : [],
      booking,
      coverage: await this.coverage.ofJob(id),
      use: await this.siteUse.sheet(id),
      ...jobState(job, booking.items),
    };
  }
}
