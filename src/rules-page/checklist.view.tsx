import type { SourceDefinition } from '../catalogue/read-source.js';
import type { CheckFigure, CheckPoint, Criterion } from '../rules/checks/checklist.js';
import { UNITS_OF_FIGURE } from '../rules/checks/read-figure.js';
import { figure } from '../web/sentences/words.js';
import { citation } from './citation.view.js';

/** What is looked at before each use, when it fails, and who says so. */
export function Checklist({
  name,
  points,
  sources,
}: {
  name: string;
  points: readonly CheckPoint[];
  sources: readonly SourceDefinition[];
}) {
  return (
    <details>
      <summary>
        Check before use: {points.length} points
        <span class="visually-hidden"> for a {name.toLowerCase()}</span>
      </summary>
      <ol>
        {points.map(({ key, look, failsWhen, figures, criteria, source }) => (
          <li key={key}>
            {look} <strong>Fails:</strong> {failsWhen}{' '}
            <span class="source">({citation(source, sources)})</span>
            {criteria.length > 0 ? (
              <ul>
                {criteria.map((criterion) => (
                  <li key={`${criterion.rule} ${criterion.part}`}>
                    Measured: {criterionWords(criterion, figures)}{' '}
                    <span class="source">({citation(criterion.source, sources)})</span>
                  </li>
                ))}
              </ul>
            ) : null}
          </li>
        ))}
      </ol>
    </details>
  );
}

/** A criterion in words, such as 'length of the cut above 0.1 of width of the webbing'. */
function criterionWords(criterion: Criterion, figures: readonly CheckFigure[]): string {
  const label = (name: string) => figures.find((known) => known.name === name)?.label ?? name;
  const border = criterion.atLimit === 'passes' ? 'more than' : 'at least';
  const part = label(criterion.part);
  if (criterion.rule === 'above') {
    const measures = figures.find(({ name }) => name === criterion.part)?.measures ?? 'count';
    return `${part} ${border} ${figure(criterion.limit, UNITS_OF_FIGURE[measures][0])}`;
  }
  const whole = `${border} ${criterion.limit} of ${label(criterion.whole)}`;
  switch (criterion.rule) {
    case 'shareAbove':
      return `${part} ${whole}`;
    case 'growthAbove':
      return `${part} greater by ${whole}`;
    case 'lossAbove':
      return `${part} smaller by ${whole}`;
  }
}
