import type { SourceKey, Working } from '../../rules/working.js';
import { figure } from '../sentences/words.js';

/** Steps of arithmetic as a calculation sheet: what went in, how, what came out, who says so. */
export function Workings({
  workings,
  sources,
  part,
}: {
  workings: readonly Working[];
  sources: (key: SourceKey) => string;
  /** The number of the part of a sheet that the steps belong to, for numbers such as 3.2. */
  part?: number;
}) {
  return (
    <ol class={part === undefined ? 'workings' : 'workings numbered'}>
      {workings.map((working, index) => (
        <li class="working" key={index}>
          <p class="working-title">
            {part === undefined ? null : `${part}.${index + 1} `}
            {working.title}
          </p>
          <p class="formula">{working.formula}</p>
          <dl class="pairs">
            {working.inputs.map((input) => (
              <div key={input.name}>
                <dt>{input.name}</dt>
                <dd>{figure(input.value, input.unit)}</dd>
              </div>
            ))}
            <div class="result">
              <dt>{working.result.name}</dt>
              <dd>{figure(working.result.value, working.result.unit)}</dd>
            </div>
          </dl>
          <p class="source">Source: {sources(working.source)}</p>
          {working.caution ? <p class="caution-line">{working.caution}</p> : null}
        </li>
      ))}
    </ol>
  );
}
