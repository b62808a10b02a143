import { Injectable } from '@nestjs/common';
import { badInput, readInput } from '../http/input.js';
import { Problem } from '../problem.js';
import type { Actor } from '../people/actor.js';
import { ChangeJobDto, MOST_PANEL_LINES, type JobView } from './jobs.dto.js';
import type { PanelRow } from './job-parts.js';
import { JobsService } from './jobs.service.js';
import { readPanelSchedule } from './panel-schedule-csv.js';

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
    { version, csv }: { version: number; csv: string },
  ): Promise<JobView> {
    const input = await readInput(ChangeJobDto, { panels: requireSchedule(csv) });
    return this.jobs.edit(actor, id, { version, input });
  }
}

/**
 * The rows of a table, all of them right.
 * @throws Problem `unreadable_file`, `bad_input` that names each problem by its line.
 */
export function requireSchedule(csv: string): readonly PanelRow[] {
  const { panels, problems } = readPanelSchedule(csv);
  if (problems.length > 0) throw badInput(problems);
  if (panels.length > MOST_PANEL_LINES) {
    throw badInput([
      { field: 'panels', message: `list at most ${MOST_PANEL_LINES} lines; put equal panels on one` },
    ]);
  }
  return panels;
}

/**
 * The text of an uploaded table.
 * @throws Problem `unreadable_file` when it is not UTF-8, as a spreadsheet in its own format is not.
 */
export function textOfTable(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Problem('unreadable_file', 'The file is not text in UTF-8. Save the sheet as CSV UTF-8.');
  }
}
