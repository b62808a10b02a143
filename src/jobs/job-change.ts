import { Not, type EntityManager } from 'typeorm';
import { Problem } from '../problem.js';
import { identityKey } from '../rules/text/look-alike.js';
import { isUniqueViolation } from '../storage/engine-errors.js';
import { JobEntity } from './job.entity.js';
import type { AddedLine } from './job-parts.js';
import type { AddedLineDto } from './job-parts.dto.js';
import type { ChangeJobDto, NewJobDto } from './jobs.dto.js';

/** What of a job a request changes. */
export type JobChanges = Partial<Omit<NewJobDto, 'addedLines'>> & { readonly addedLines?: AddedLine[] };

/** What the request states, without the fields it leaves out, and with a key for every line it adds. */
export function changesOf({ addedLines, ...given }: ChangeJobDto): JobChanges {
  return { ...stated(given), ...(addedLines && { addedLines: withKeys(addedLines) }) };
}

/** Gives each line that was added without a key the next free one. */
export function withKeys(lines: readonly AddedLineDto[]): AddedLine[] {
  const taken = new Set(lines.map(({ lineKey }) => lineKey));
  let number = 0;
  return lines.map(({ lineKey, ...line }) => {
    if (lineKey) return { ...line, lineKey };
    do number += 1;
    while (taken.has(`added${number}`));
    return { ...line, lineKey: `added${number}` };
  });
}

/** Whether a change moves the days that the gear is away. */
export function windowMoved(before: Days, after: Days): boolean {
  return after.loadOutDay !== before.loadOutDay || after.backDay !== before.backDay;
}

/** @throws Problem `not_allowed_now`. */
export function refuseCancelled({ cancelled, reference }: Pick<JobEntity, 'cancelled' | 'reference'>): void {
  if (cancelled) throw new Problem('not_allowed_now', `Job ${reference} is cancelled.`);
}

/**
 * What to do when a job could not be written: tells of a number that another job has, and passes on all else.
 * @throws Problem `reference_taken`.
 */
export function sayReferenceTaken(reference: string) {
  return (error: unknown): never => {
    if (!isUniqueViolation(error)) throw error;
    throw referenceTaken(reference);
  };
}

/** @throws Problem `reference_taken` when another job has the number, as writing the job would. */
export async function refuseTakenReference(
  manager: EntityManager,
  { id, reference }: Pick<JobEntity, 'id' | 'reference'>,
): Promise<void> {
  const taken = await manager.existsBy(JobEntity, { id: Not(id), referenceKey: identityKey(reference) });
  if (taken) throw referenceTaken(reference);
}

type Days = Pick<JobEntity, 'loadOutDay' | 'backDay'>;

function referenceTaken(reference: string): Problem {
  return new Problem(
    'reference_taken',
    `'${reference}' is the number of another job, give or take case and spaces.`,
  );
}

function stated(input: Omit<ChangeJobDto, 'addedLines'>): Partial<Omit<NewJobDto, 'addedLines'>> {
  return Object.fromEntries(
    Object.entries(input).filter(([, value]) => value !== undefined && value !== null),
  );
}
