import { StateMark, type StateKind } from '../web/components/state-mark.js';
import type { CoverageView, LineCoverageView } from './coverage.dto.js';

/** How far a job's gear is checked today, on the sheet of the job. Nothing while no gear is out. */
export function CoverageSection({ coverage }: { coverage: CoverageView }) {
  if (!coverage.out) return null;
  return (
    <section class="sheet">
      <h2>Checks before use, today</h2>
      <ul>
        {coverage.lines.map((line) => (
          <li key={line.lineKey}>
            <StateMark state={stateOf(line)} word={`${line.label}: ${line.sentence}`} />
          </li>
        ))}
      </ul>
      <p class="actions">
        <a class="button quiet" href={`/jobs/${coverage.jobId}/checks`}>
          Check the gear
        </a>
      </p>
    </section>
  );
}

function stateOf({ items, checked, of }: LineCoverageView): StateKind {
  if (items.some(({ state }) => state === 'failed')) return 'refused';
  return checked === of ? 'ok' : 'due';
}
