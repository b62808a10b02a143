import { describe, expect, it } from 'vitest';
import type { CheckProblem } from '../../src/rules/checks/check-problem.js';
import { CHECK_PROBLEM_CODES } from '../../src/rules/checks/check-problem.js';
import type { CheckPoint } from '../../src/rules/checks/checklist.js';
import { checkProblemSentence } from '../../src/web/sentences/check-problem.js';

const SOURCE = { key: 'common-practice' };
const POINT: CheckPoint = {
  key: 'webbing',
  look: 'Look at the webbing.',
  failsWhen: 'It is cut.',
  severity: 'immediateDanger',
  figures: [
    { name: 'cut', label: 'length of the cut', measures: 'length', most: '300' },
    { name: 'twist', label: 'twist', measures: 'angle', most: '90' },
    { name: 'wires', label: 'count of broken wires', measures: 'count', most: '500' },
  ],
  criteria: [],
  source: SOURCE,
};

describe('a problem with a check', () => {
  it.each<[CheckProblem, string]>([
    [
      { code: 'checklist_empty' },
      'There is no checklist for this kind of gear, so a check of it says nothing.',
    ],
    [{ code: 'unknown_point', point: 'smell' }, "The checklist has no point 'smell'."],
    [
      { code: 'answered_twice', point: 'webbing' },
      'Look at the webbing. Answered twice. Answer each point once.',
    ],
    [{ code: 'point_unanswered', point: 'webbing' }, 'Look at the webbing. Not answered yet.'],
    [
      { code: 'unknown_figure', point: 'webbing', figure: 'depth' },
      "Look at the webbing. No figure 'depth' is asked for here.",
    ],
    [
      { code: 'unit_not_of_figure', point: 'webbing', figure: 'cut' },
      'Look at the webbing. The length of the cut is entered in mm or inches.',
    ],
    [
      { code: 'unit_not_of_figure', point: 'webbing', figure: 'twist' },
      'Look at the webbing. The twist is entered in degrees.',
    ],
    [
      { code: 'unit_not_of_figure', point: 'webbing', figure: 'wires' },
      'Look at the webbing. The count of broken wires is entered as a bare number.',
    ],
    [
      { code: 'figure_unreadable', point: 'webbing', figure: 'cut' },
      'Look at the webbing. The length of the cut cannot be read. Write a bare number such as 5.5, or off an inch rule 1 3/4.',
    ],
    [
      { code: 'figure_unreadable', point: 'webbing', figure: 'wires' },
      'Look at the webbing. The count of broken wires cannot be read. Write a bare number such as 5.',
    ],
    [
      { code: 'figures_doubtful', point: 'webbing', figure: 'cut' },
      'Look at the webbing. The length of the cut is doubtful beside the figure that it is held against. Look at both, and enter them in one unit.',
    ],
    [
      { code: 'figure_out_of_range', point: 'webbing', figure: 'cut', most: '300' },
      'Look at the webbing. The length of the cut cannot be over 300 mm. Look at the unit.',
    ],
    [
      { code: 'partner_missing', point: 'webbing', figure: 'cut' },
      'Look at the webbing. Enter the length of the cut too: one figure is judged by the other.',
    ],
  ])('is told: %o', (problem, sentence) => {
    expect(checkProblemSentence(problem, [POINT]).replace(/\u00a0/g, ' ')).toBe(sentence);
  });

  it('has a sentence of its own for each code, and names the figure where there is one', () => {
    const told = CHECK_PROBLEM_CODES.map((code) =>
      checkProblemSentence({ code, point: 'webbing', figure: 'cut', most: '300' }, [POINT]),
    );
    expect(new Set(told).size).toBe(CHECK_PROBLEM_CODES.length);
    const naming = CHECK_PROBLEM_CODES.filter((_code, index) => told[index]?.includes('length of the cut'));
    expect(naming).toEqual([
      'unknown_figure',
      'unit_not_of_figure',
      'figure_unreadable',
      'figure_negative',
      'figure_not_whole',
      'figure_out_of_range',
      'figure_zero',
      'partner_missing',
      'figures_doubtful',
    ]);
  });
});
