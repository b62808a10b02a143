import { Injectable } from '@nestjs/common';
import { badInput, readInput } from '../http/input.js';
import type { Actor } from '../people/actor.js';
import { readCsv } from '../register/import/read-csv.js';
import type { Table } from '../register/import/table.js';
import { ChangeJobDto, MOST_PANEL_LINES, type JobView } from './jobs.dto.js';
import type { PanelRow } from './job-parts.js';
import { JobsService } from './jobs.service.js';
import { readPanelSchedule } from './read-panel-schedule.js';

/** Takes panel schedules from tables. */
@Injectable()
export class PanelSchedules {
  constructor(private readonly jobs: JobsService) {}

  /**
   * Replaces the schedule of a job by that of a table, or by nothing of it when a row is wrong.
   * @throws Problem `unreadable_file`, `bad_input` by row, and what `JobsService.edit` throws.
   */
  async replace(
    actor: Actor,
    id: number,
    { version, table }: { version: number; table: Table },
  ): Promise<JobView> {
    const input = await readInput(ChangeJobDto, { panels: requireSchedule(table) });
    return this.jobs.edit(actor, id, { version, input });
  }
}

/**
 * The rows of a table, all of them right.
 * @throws Problem `unreadable_file`, `bad_input` that names each problem by its line.
 */
export function requireSchedule(table: Table): readonly PanelRow[] {
  const { panels, problems } = readPanelSchedule(table);
  if (problems.length > 0) throw badInput(problems);
  if (panels.length > MOST_PANEL_LINES) {
    throw badInput([
      { field: 'panels', message: `list at most ${MOST_PANEL_LINES} lines; put equal panels on one` },
    ]);
  }
  return panels;
}

/**
 * The table that was pasted or sent as text.
 * @throws Problem `unreadable_file`.
 */
export function tableOfText(text: string): Table {
  return readCsv(Buffer.from(text));
}
