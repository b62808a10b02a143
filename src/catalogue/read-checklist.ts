import type { CheckFigure, CheckPoint, Criterion, ShareCriterion } from '../rules/checks/checklist.js';
import { SHARE_PLACES } from '../rules/checks/judge-criterion.js';
import { Exact } from '../rules/quantities/exact.js';
import { readCitation, type Sources } from './read-source.js';
import type { Reader } from './reader.js';

const KEY_SHAPE = { shape: /^[a-z][A-Za-z]*$/, advice: "write a key such as 'hookThroat'" };
const MOST_SHAPE = {
  shape: /^([1-9]\d*(\.\d+)?|0\.\d*[1-9]\d*)$/,
  advice: "write a figure above 0 in quotes, as in '300'",
};
const SHARE_SHAPE = {
  shape: new RegExp(`^(?!0\\.0+$)0\\.\\d{1,${SHARE_PLACES}}$`),
  advice: `write a share above '0' and below '1' with at most ${SHARE_PLACES} decimals, as in '0.1'`,
};
const LIMIT_SHAPE = {
  shape: /^(0|[1-9]\d*)(\.\d+)?$/,
  advice: "write a decimal number in quotes, as in '10'",
};

const SHARE_RULES = ['shareAbove', 'growthAbove', 'lossAbove'] as const satisfies ShareCriterion['rule'][];
const RULES = [...SHARE_RULES, 'above'] as const;
const SEVERITIES = ['immediateDanger', 'observation'] as const satisfies CheckPoint['severity'][];
const MEASURED = ['length', 'angle', 'count'] as const satisfies CheckFigure['measures'][];

/** Reads the checklist of a kind: points each with a key of its own, at least one. */
export function readChecklist(reader: Reader, sources: Sources): CheckPoint[] {
  const seen = new Set<string>();
  return reader.readList((entry) => readPoint(entry, sources, seen));
}

function readPoint(reader: Reader, sources: Sources, seen: Set<string>): CheckPoint {
  reader.expectKeys(['key', 'look', 'failsWhen', 'severity', 'source'], ['figures', 'criteria']);
  const key = readNewName(reader.at('key'), seen);
  const figures = reader.has('figures') ? readFigures(reader.at('figures')) : [];
  const criteria = reader.has('criteria')
    ? reader.at('criteria').readList((entry) => readCriterion(entry, figures, sources))
    : [];
  const used = new Set(criteria.flatMap(({ part, whole }) => [part, whole]));
  for (const { name } of figures.filter((figure) => !used.has(figure.name))) {
    reader.refuse(`no criterion uses the figure '${name}'`, 'write one, or leave the figure out');
  }
  return {
    key,
    look: reader.at('look').readText(),
    failsWhen: reader.at('failsWhen').readText(),
    severity: reader.at('severity').readOneOf(SEVERITIES, 'severity'),
    figures,
    criteria,
    source: readCitation(reader.at('source'), sources),
  };
}

function readFigures(reader: Reader): CheckFigure[] {
  const seen = new Set<string>();
  return reader.readList((entry) => {
    entry.expectKeys(['name', 'label', 'measures', 'most']);
    return {
      name: readNewName(entry.at('name'), seen),
      label: entry.at('label').readText(),
      measures: entry.at('measures').readOneOf(MEASURED, 'kind of figure'),
      most: entry.at('most').readText(MOST_SHAPE),
    };
  });
}

function readNewName(reader: Reader, seen: Set<string>): string {
  const name = reader.readText(KEY_SHAPE);
  if (seen.has(name)) reader.refuse(`'${name}' is there already`, 'give each a name of its own');
  seen.add(name);
  return name;
}

function readCriterion(reader: Reader, figures: readonly CheckFigure[], sources: Sources): Criterion {
  const rule = reader.at('rule').readOneOf(RULES, 'rule');
  const names = figures.map(({ name }) => name);
  const ends = ['limit', 'atLimit', 'source'];
  reader.expectKeys(['rule', 'part', ...(rule === 'above' ? ends : ['whole', ...ends])]);
  const common = {
    part: reader.at('part').readOneOf(names, 'figure of this point'),
    limit: reader.at('limit').readText(rule === 'above' ? LIMIT_SHAPE : SHARE_SHAPE),
    atLimit: reader.at('atLimit').readOneOf(['passes', 'fails'] as const, 'verdict at the limit'),
    source: readCitation(reader.at('source'), sources),
  };
  const part = figures.find(({ name }) => name === common.part);
  if (rule === 'above') {
    refuseUnreachable(reader.at('limit'), common.limit, part);
    return { rule, ...common };
  }
  const comparable = figures.filter(
    ({ name, measures }) => name !== part?.name && measures === part?.measures,
  );
  const whole = reader.at('whole').readOneOf(
    comparable.map(({ name }) => name),
    `figure to hold '${common.part}' against`,
  );
  return { rule, whole, ...common };
}

/** A limit that no figure which may be entered can reach would never fail anything; a count has whole limits. */
function refuseUnreachable(reader: Reader, limit: string, part: CheckFigure | undefined): void {
  if (part === undefined || !LIMIT_SHAPE.shape.test(limit) || !MOST_SHAPE.shape.test(part.most ?? '')) return;
  if (part.measures === 'count' && limit.includes('.'))
    reader.refuse('a count has no decimals', 'write a whole limit');
  if (!Exact.of(limit).isLessThan(Exact.of(part.most ?? '')))
    reader.refuse(
      `'${part.name}' may never be entered above its limit`,
      'write a lower limit, or a higher most',
    );
}
