import type { CheckProblem } from './check-problem.js';
import type { CheckPoint } from './checklist.js';
import { readFigure, type EnteredFigure, type ReadFigure } from './read-figure.js';

/** The figures of one point that were entered and could be read, by name, and what is wrong with the others. */
export interface PointFigures {
  readonly figures: ReadonlyMap<string, ReadFigure>;
  readonly problems: readonly CheckProblem[];
}

/** Reads what was measured to one point. A blank entry was not measured. */
export function readFigures(
  point: CheckPoint,
  entered: Readonly<Record<string, EnteredFigure>>,
): PointFigures {
  const figures = new Map<string, ReadFigure>();
  const problems: CheckProblem[] = [];
  for (const [name, entry] of Object.entries(entered)) {
    if (entry.value.trim() === '') continue;
    const definition = point.figures.find((figure) => figure.name === name);
    const reading = definition ? readFigure(definition, entry) : 'unknown_figure';
    if (typeof reading !== 'string') figures.set(name, reading);
    else problems.push(problemOf(reading, point.key, { name, most: definition?.most }));
  }
  return { figures, problems };
}

function problemOf(
  code: CheckProblem['code'],
  point: string,
  { name, most }: { name: string; most: string | undefined },
): CheckProblem {
  const problem = { code, point, figure: name };
  return code === 'figure_out_of_range' && most !== undefined ? { ...problem, most } : problem;
}
