import type { CheckProblem, CheckProblemCode } from '../../rules/checks/check-problem.js';
import type { CheckFigure, CheckPoint } from '../../rules/checks/checklist.js';
import { UNITS_OF_FIGURE } from '../../rules/checks/read-figure.js';
import { figure } from './words.js';

/** What keeps a check from being judged, and what to do about it; `points` is the checklist that was answered. */
export function checkProblemSentence(problem: CheckProblem, points: readonly CheckPoint[]): string {
  const point = points.find(({ key }) => key === problem.point);
  const asked = point?.figures.find(({ name }) => name === problem.figure);
  const sentence = SENTENCES[problem.code]({
    problem,
    name: asked?.label ?? problem.figure ?? 'figure',
    asked,
  });
  return point ? `${point.look} ${sentence}` : sentence;
}

interface Told {
  readonly problem: CheckProblem;
  /** What the figure is called. */
  readonly name: string;
  readonly asked: CheckFigure | undefined;
}

const SENTENCES: Readonly<Record<CheckProblemCode, (told: Told) => string>> = {
  checklist_empty: () => 'There is no checklist for this kind of gear, so a check of it says nothing.',
  unknown_point: ({ problem }) => `The checklist has no point '${problem.point ?? ''}'.`,
  answered_twice: () => 'Answered twice. Answer each point once.',
  point_unanswered: () => 'Not answered yet.',
  unknown_figure: ({ name }) => `No figure '${name}' is asked for here.`,
  unit_not_of_figure: ({ name, asked }) =>
    `The ${name} is entered ${UNIT_WORDS[asked?.measures ?? 'length']}.`,
  figure_unreadable: ({ name, asked }) =>
    `The ${name} cannot be read. Write ${EXAMPLES[asked?.measures ?? 'length']}.`,
  figure_negative: ({ name }) => `The ${name} cannot be below nought.`,
  figure_not_whole: ({ name }) => `The ${name} is counted, and has no decimals.`,
  figure_out_of_range: ({ name, problem, asked }) =>
    `The ${name} cannot be over ${figure(problem.most ?? '', UNITS_OF_FIGURE[asked?.measures ?? 'length'][0])}. Look at the unit.`,
  figure_zero: ({ name }) => `The ${name} cannot be nought.`,
  partner_missing: ({ name }) => `Enter the ${name} too: one figure is judged by the other.`,
  figures_doubtful: ({ name }) =>
    `The ${name} is doubtful beside the figure that it is held against. Look at both, and enter them in one unit.`,
};

const EXAMPLES = {
  length: 'a bare number such as 5.5, or off an inch rule 1 3/4',
  angle: 'a bare number such as 5.5',
  count: 'a bare number such as 5',
} as const satisfies Readonly<Record<CheckFigure['measures'], string>>;

const UNIT_WORDS = {
  length: 'in mm or inches',
  angle: 'in degrees',
  count: 'as a bare number',
} as const satisfies Readonly<Record<CheckFigure['measures'], string>>;
