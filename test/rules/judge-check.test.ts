import { describe, expect, it } from 'vitest';
import type { CheckAnswer, CheckPoint } from '../../src/rules/checks/checklist.js';
import type { CheckProblem } from '../../src/rules/checks/check-problem.js';
import { judgeCheck, type Finding } from '../../src/rules/checks/judge-check.js';

const SOURCE = { key: 'doe-std-1090', page: '299', verified: 'read' } as const;
const BORDER = { limit: '0.1', atLimit: 'passes', source: SOURCE } as const;
const CAUTION = 'The limit is reached or passed: out of use until a competent person has looked at it.';

const LABEL: CheckPoint = {
  key: 'label',
  look: 'Read the label.',
  failsWhen: 'It cannot be read.',
  severity: 'observation',
  figures: [],
  criteria: [],
  source: SOURCE,
};
const WEBBING: CheckPoint = {
  ...LABEL,
  key: 'webbing',
  severity: 'immediateDanger',
  figures: [
    { name: 'cut', label: 'cut', measures: 'length', most: '300' },
    { name: 'worn', label: 'wear', measures: 'length' },
    { name: 'width', label: 'width', measures: 'length', most: '300' },
  ],
  criteria: [
    { ...BORDER, rule: 'shareAbove', part: 'cut', whole: 'width' },
    { ...BORDER, rule: 'shareAbove', part: 'worn', whole: 'width', limit: '0.2', atLimit: 'fails' },
  ],
};
const RING: CheckPoint = {
  ...WEBBING,
  key: 'ring',
  figures: [
    { name: 'now', label: 'now', measures: 'length' },
    { name: 'asNew', label: 'as new', measures: 'length' },
  ],
  criteria: [
    { ...BORDER, rule: 'growthAbove', part: 'now', whole: 'asNew' },
    { ...BORDER, rule: 'lossAbove', part: 'now', whole: 'asNew', limit: '0.2', atLimit: 'fails' },
  ],
};
const [GROWTH, LOSS] = RING.criteria;
const ROPE: CheckPoint = {
  ...WEBBING,
  key: 'rope',
  figures: [
    { name: 'wires', label: 'broken wires', measures: 'count', most: '500' },
    { name: 'twist', label: 'twist', measures: 'angle', most: '90' },
    { name: 'gap', label: 'gap', measures: 'length', most: '100' },
  ],
  criteria: [
    { rule: 'above', part: 'wires', limit: '10', atLimit: 'fails', source: SOURCE },
    { rule: 'above', part: 'twist', limit: '0', atLimit: 'passes', source: SOURCE },
    { rule: 'above', part: 'gap', limit: '25.4', atLimit: 'passes', source: SOURCE },
  ],
};

type Figures = NonNullable<CheckAnswer['figures']>;
const mm = (value: string) => ({ value, unit: 'mm' }) as const;
const inches = (value: string) => ({ value, unit: 'in' }) as const;
const counted = (value: string) => ({ value, unit: '' }) as const;
const degrees = (value: string) => ({ value, unit: '°' }) as const;

/** One point judged on figures alone; its answer is good. */
function findingOf(point: CheckPoint, figures: Figures, answer: CheckAnswer['answer'] = 'good'): Finding {
  const judged = judgeCheck([point], [{ point: point.key, answer, figures }]);
  if ('problems' in judged) throw new Error(JSON.stringify(judged.problems));
  const [finding] = judged.findings;
  if (!finding) throw new Error('no finding');
  expect(judged.outcome).toBe(finding.failed ? 'unfit' : 'fit');
  return finding;
}

function problemsOf(points: readonly CheckPoint[], answers: readonly CheckAnswer[]): readonly CheckProblem[] {
  const judged = judgeCheck(points, answers);
  return 'problems' in judged ? judged.problems : [];
}

function figureProblems(point: CheckPoint, figures: Figures): readonly CheckProblem[] {
  return problemsOf([point], [{ point: point.key, answer: 'good', figures }]);
}

describe('a checklist', () => {
  const points = [LABEL, WEBBING];

  it('passes where every point is good, in the order of the points', () => {
    const answers: CheckAnswer[] = [
      { point: 'webbing', answer: 'good', remarks: ' dusty ' },
      { point: 'label', answer: 'good', remarks: ' ' },
    ];
    expect(judgeCheck(points, answers)).toEqual({
      outcome: 'fit',
      findings: [
        { point: 'label', severity: 'observation', failed: false, workings: [] },
        { point: 'webbing', severity: 'immediateDanger', failed: false, workings: [], remarks: 'dusty' },
      ],
    });
  });

  it('fails where one point is bad, and says which', () => {
    const answers: CheckAnswer[] = [
      { point: 'label', answer: 'bad' },
      { point: 'webbing', answer: 'good' },
    ];
    expect(judgeCheck(points, answers)).toEqual({
      outcome: 'unfit',
      findings: [
        { point: 'label', severity: 'observation', failed: true, workings: [] },
        { point: 'webbing', severity: 'immediateDanger', failed: false, workings: [] },
      ],
    });
  });

  it('has no outcome until every point is answered once', () => {
    expect(problemsOf(points, [])).toEqual([
      { code: 'point_unanswered', point: 'label' },
      { code: 'point_unanswered', point: 'webbing' },
    ]);
    const label: CheckAnswer = { point: 'label', answer: 'good' };
    const stray: CheckAnswer = { point: '__proto__', answer: 'good' };
    expect(problemsOf(points, [label, label, { ...label, answer: 'bad' }, stray, stray])).toEqual([
      { code: 'point_unanswered', point: 'webbing' },
      { code: 'answered_twice', point: 'label' },
      { code: 'unknown_point', point: '__proto__' },
    ]);
  });

  it('without points says nothing of an item', () => {
    expect(judgeCheck([], [])).toEqual({ problems: [{ code: 'checklist_empty' }] });
    expect(judgeCheck([], [{ point: 'label', answer: 'good' }])).toEqual({
      problems: [{ code: 'checklist_empty' }],
    });
  });
});

describe('a cut as a share of the width', () => {
  it('is shown with its figures, limit and source', () => {
    expect(findingOf(WEBBING, { cut: mm('5.00'), width: mm('40') })).toEqual({
      point: 'webbing',
      severity: 'immediateDanger',
      failed: true,
      workings: [
        {
          title: 'Measured share',
          formula: 'share = cut ÷ width; fails above the limit',
          inputs: [
            { name: 'cut', value: '5', unit: 'mm' },
            { name: 'width', value: '40', unit: 'mm' },
            { name: 'limit', value: '0.1', unit: '' },
          ],
          result: { name: 'share', value: '0.125', unit: '' },
          source: 'doe-std-1090',
          caution: CAUTION,
        },
      ],
    });
  });

  it.each([
    ['5', '50', false, '0.1'],
    ['5.0000000001', '50', true, '0.10000001'],
    ['4.9999999999', '50', false, '0.1'],
    ['0', '50', false, '0'],
  ])('of %s in %s mm: failed %s, share %s', (cut, width, failed, share) => {
    const finding = findingOf(WEBBING, { cut: mm(cut), width: mm(width) });
    expect(finding.failed).toBe(failed);
    expect(finding.workings[0]?.result.value).toBe(share);
    expect(finding.workings[0]?.caution).toBe(failed ? CAUTION : undefined);
  });

  it.each([
    ['10', '50', true, '0.2'],
    ['9.9999999999', '50', false, '0.19999999'],
  ])('fails at a limit that is said to fail: %s in %s mm', (worn, width, failed, share) => {
    const finding = findingOf(WEBBING, { worn: mm(worn), width: mm(width) });
    expect(finding.failed).toBe(failed);
    expect(finding.workings[0]?.formula).toBe('share = wear ÷ width; fails at the limit and above');
    expect(finding.workings[0]?.result.value).toBe(share);
  });

  it('is judged beside another figure in the same width, in the order of the criteria', () => {
    const finding = findingOf(WEBBING, { width: mm('50'), worn: mm('20'), cut: mm('1') });
    expect(finding.failed).toBe(true);
    expect(finding.workings.map(({ result }) => result.value)).toEqual(['0.02', '0.4']);
  });

  it('is the eye’s to judge where nothing was measured', () => {
    expect(findingOf(WEBBING, { cut: mm(' '), width: mm('') })).toMatchObject({
      failed: false,
      workings: [],
    });
    expect(findingOf(WEBBING, {}, 'bad')).toMatchObject({ failed: true, workings: [] });
  });

  it('never turns a bad answer to good', () => {
    const finding = findingOf(WEBBING, { cut: mm('1'), width: mm('50') }, 'bad');
    expect(finding.failed).toBe(true);
    expect(finding.workings[0]).not.toHaveProperty('caution');
  });

  it('needs both figures, and names the missing one once', () => {
    const missing = (figure: string) => ({ code: 'partner_missing', point: 'webbing', figure });
    expect(figureProblems(WEBBING, { cut: mm('5') })).toEqual([missing('width')]);
    expect(figureProblems(WEBBING, { cut: mm('5'), worn: mm('5') })).toEqual([missing('width')]);
    expect(figureProblems(WEBBING, { width: mm('50') })).toEqual([missing('cut')]);
    expect(figureProblems(WEBBING, { cut: mm('5'), width: mm('0') })).toEqual([
      { code: 'figure_zero', point: 'webbing', figure: 'width' },
    ]);
    expect(figureProblems(WEBBING, { cut: mm('0'), worn: mm('0'), width: mm('0.0') })).toHaveLength(1);
  });
});

// 1 in is 25.4 mm exactly: NIST SP 811 appendix B.8.
describe('inches', () => {
  it('are shown as entered where all figures are in inches', () => {
    const [working] = findingOf(WEBBING, { cut: inches('0.2'), width: inches('2') }).workings;
    expect(working?.inputs).toEqual([
      { name: 'cut', value: '0.2', unit: 'in' },
      { name: 'width', value: '2', unit: 'in' },
      { name: 'limit', value: '0.1', unit: '' },
    ]);
    expect(working?.result.value).toBe('0.1');
  });

  it('become millimetres exactly beside a figure in millimetres', () => {
    const finding = findingOf(WEBBING, { cut: mm('5.08'), width: inches('2') });
    expect(finding.failed).toBe(false);
    expect(finding.workings[0]?.inputs).toEqual([
      { name: 'cut', value: '5.08', unit: 'mm' },
      { name: 'width', value: '50.8', unit: 'mm' },
      { name: 'limit', value: '0.1', unit: '' },
    ]);
    expect(findingOf(WEBBING, { cut: mm('5.0801'), width: inches('2') }).failed).toBe(true);
    expect(findingOf(WEBBING, { cut: inches('0.2'), width: mm('50.8') }).failed).toBe(false);
  });

  it('are doubted beside millimetres where the share would fail in one unit', () => {
    const doubted = [{ code: 'figures_doubtful', point: 'webbing', figure: 'cut' }];
    expect(figureProblems(WEBBING, { cut: mm('0.25'), width: inches('2') })).toEqual(doubted);
    expect(figureProblems(WEBBING, { cut: mm('0.2'), width: inches('2') })).toEqual([]);
    expect(figureProblems(WEBBING, { cut: mm('2'), width: inches('2') })).toEqual(doubted);
    expect(figureProblems(WEBBING, { cut: mm('2.01'), width: inches('2') })).toEqual([]);
    expect(figureProblems(WEBBING, { cut: mm('0.2'), worn: mm('0.4'), width: inches('2') })).toEqual([
      { ...doubted[0], figure: 'worn' },
    ]);
    expect(findingOf(WEBBING, { cut: inches('1/4'), width: inches('2') }).failed).toBe(true);
    expect(findingOf(WEBBING, { cut: inches('0.25'), width: mm('50') }).failed).toBe(true);
  });

  it.each([
    ['1/2', '0.5'],
    ['1 3/4', '1.75'],
    ['2-1/64', '2.015625'],
    ['10 63/64', '10.984375'],
    ['.5', '0.5'],
    ['1,5', '1.5'],
    ['1.125', '1.125'],
  ])('are read off an inch rule: %s is %s', (entry, value) => {
    const [working] = findingOf(WEBBING, { cut: inches('0'), width: inches(entry) }).workings;
    expect(working?.inputs[1]).toEqual({ name: 'width', value, unit: 'in' });
  });

  it('count towards limits in millimetres', () => {
    const finding = findingOf(ROPE, { gap: inches('1') });
    expect(finding.failed).toBe(false);
    expect(finding.workings[0]).toMatchObject({
      inputs: [{ name: 'limit', value: '25.4', unit: 'mm' }],
      result: { name: 'gap', value: '25.4', unit: 'mm' },
    });
    expect(findingOf(ROPE, { gap: inches('1.0001') }).failed).toBe(true);
  });
});

describe('growth and loss', () => {
  it.each([
    ['110', false, '0.1', '-0.1'],
    ['110.001', true, '0.10001', '-0.10001'],
    ['100', false, '0', '0'],
    ['80.001', false, '-0.19999', '0.19999'],
    ['80', true, '-0.2', '0.2'],
    ['79.999', true, '-0.20001', '0.20001'],
  ])('of %s mm from 100 mm: failed %s', (now, failed, growth, loss) => {
    const finding = findingOf(RING, { now: mm(now), asNew: mm('100') });
    expect(finding.failed).toBe(failed);
    expect(finding.workings.map(({ result }) => [result.name, result.value])).toEqual([
      ['growth', growth],
      ['loss', loss],
    ]);
    expect(finding.workings.map(({ formula }) => formula)).toEqual([
      'growth = (now − as new) ÷ as new; fails above the limit',
      'loss = (as new − now) ÷ as new; fails at the limit and above',
    ]);
    expect(finding.workings.map(({ title }) => title)).toEqual(['Measured growth', 'Measured loss']);
  });

  it('are doubted where they pass only because a unit was mixed up', () => {
    const doubted = [{ code: 'figures_doubtful', point: 'ring', figure: 'now' }];
    const opening = { ...RING, criteria: GROWTH ? [GROWTH] : [] };
    expect(figureProblems(opening, { now: mm('50'), asNew: mm('100') })).toEqual(doubted);
    expect(figureProblems(opening, { now: mm('50.1'), asNew: mm('100') })).toEqual([]);
    expect(figureProblems(opening, { now: mm('250'), asNew: mm('100') })).toEqual([]);
    const wearing = { ...RING, criteria: LOSS ? [LOSS] : [] };
    expect(figureProblems(wearing, { now: inches('8'), asNew: mm('10') })).toEqual(doubted);
    expect(figureProblems(wearing, { now: mm('20'), asNew: mm('10') })).toEqual(doubted);
    expect(figureProblems(wearing, { now: mm('19.9'), asNew: mm('10') })).toEqual([]);
    expect(figureProblems(wearing, { now: mm('1'), asNew: mm('10') })).toEqual([]);
    expect(figureProblems(WEBBING, { cut: mm('0'), width: mm('10') })).toEqual([]);
  });

  it('are not doubted where they fail the point anyway', () => {
    expect(findingOf(RING, { now: mm('20'), asNew: mm('100') }).failed).toBe(true);
    expect(findingOf(RING, { now: mm('300'), asNew: mm('100') }).failed).toBe(true);
  });
});

describe('a limit of its own', () => {
  it('is shown with figure, limit and source', () => {
    expect(findingOf(ROPE, { wires: counted('10') }).workings).toEqual([
      {
        title: 'Measured broken wires',
        formula: 'broken wires; fails at the limit and above',
        inputs: [{ name: 'limit', value: '10', unit: '' }],
        result: { name: 'broken wires', value: '10', unit: '' },
        source: 'doe-std-1090',
        caution: CAUTION,
      },
    ]);
  });

  it.each([
    [{ wires: counted('9') }, false],
    [{ wires: counted('10.0') }, true],
    [{ wires: counted('500') }, true],
    [{ twist: degrees('0') }, false],
    [{ twist: degrees('0.1') }, true],
    [{ wires: counted('9'), twist: degrees('1') }, true],
  ])('of %o: failed %s', (figures, failed) => {
    expect(findingOf(ROPE, figures).failed).toBe(failed);
  });

  it('is in degrees for an angle', () => {
    expect(findingOf(ROPE, { twist: degrees('2') }).workings[0]?.result).toEqual({
      name: 'twist',
      value: '2',
      unit: '°',
    });
  });
});

describe('a figure', () => {
  it.each([
    ['cut', mm('-1'), 'figure_negative'],
    ['cut', mm('−0.5'), 'figure_negative'],
    ['cut', mm('five'), 'figure_unreadable'],
    ['cut', mm('1e3'), 'figure_unreadable'],
    ['cut', mm('1/2'), 'figure_unreadable'],
    ['cut', inches('1/3'), 'figure_unreadable'],
    ['cut', inches('1/2 in'), 'figure_unreadable'],
    ['cut', inches('1 1 1/2'), 'figure_unreadable'],
    ['cut', mm('1,250'), 'figure_unreadable'],
    ['cut', mm('0.0000000000000000000'), 'figure_unreadable'],
    ['cut', degrees('1'), 'unit_not_of_figure'],
    ['cut', counted('1'), 'unit_not_of_figure'],
    ['depth', mm('1'), 'unknown_figure'],
    ['toString', mm('1'), 'unknown_figure'],
  ] as const)('%s of %o is refused: %s', (name, entry, code) => {
    const expected = [{ code, point: 'webbing', figure: name }];
    expect(figureProblems(WEBBING, { [name]: entry, width: mm('50') })).toEqual(expected);
  });

  it('may take twenty characters', () => {
    expect(figureProblems(WEBBING, { cut: mm('1.000000000000000000'), width: mm('50') })).toEqual([]);
  });

  it.each([
    [{ wires: counted('1.5') }, 'figure_not_whole', 'wires'],
    [{ wires: mm('1') }, 'unit_not_of_figure', 'wires'],
    [{ twist: mm('1') }, 'unit_not_of_figure', 'twist'],
  ] as const)('%o is refused: %s', (figures, code, figure) => {
    expect(figureProblems(ROPE, figures)).toEqual([{ code, point: 'rope', figure }]);
  });

  it('may not be more than can be meant', () => {
    const tooMuch = (figure: string, most: string) => ({
      code: 'figure_out_of_range',
      point: 'rope',
      figure,
      most,
    });
    expect(figureProblems(ROPE, { wires: counted('501') })).toEqual([tooMuch('wires', '500')]);
    expect(figureProblems(ROPE, { gap: mm('100') })).toEqual([]);
    expect(figureProblems(ROPE, { gap: inches('3.94') })).toEqual([tooMuch('gap', '100')]);
    expect(figureProblems(ROPE, { gap: inches('3.93') })).toEqual([]);
    expect(figureProblems(RING, { now: mm('1000000'), asNew: mm('999999') })).toEqual([]);
  });

  it('keeps its problem whatever is wrong elsewhere', () => {
    const answers: CheckAnswer[] = [{ point: 'webbing', answer: 'bad', figures: { cut: mm('x') } }];
    expect(problemsOf([LABEL, WEBBING], answers)).toEqual([
      { code: 'point_unanswered', point: 'label' },
      { code: 'figure_unreadable', point: 'webbing', figure: 'cut' },
    ]);
  });
});
