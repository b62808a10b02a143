import type { KindDefinition } from '../../rules/gear/kind.js';
import type { DimensionNeed } from '../../rules/lines/need.js';
import { Scroll } from '../../web/components/scroll.js';
import { StateMark } from '../../web/components/state-mark.js';
import { shortSentence } from '../../web/sentences/remedy.js';
import { figure, needFigure } from '../../web/sentences/words.js';
import { Becomes } from './becomes.js';
import type { LineDifference, LineStand } from './compare-lines.js';

type Kinds = readonly KindDefinition[];

const NONE = 'none';

const SIZE_WORDS: Readonly<Record<DimensionNeed['rule'], string>> = {
  atLeast: 'at least',
  atMost: 'at most',
  equals: 'exactly',
};

/** The gear lines that a change changes, before and after. */
export function LineDifferences({ lines, kinds }: { lines: readonly LineDifference[]; kinds: Kinds }) {
  if (lines.length === 0) return <p>The gear lines stay as they are.</p>;
  return (
    <Scroll label="Gear lines that change">
      <table>
        <caption>Gear lines that change</caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">After the change</th>
            <th scope="col">How many</th>
            <th scope="col">Each rated at least</th>
            <th scope="col">Sizes</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ key, label, changes, before, after }) => (
            <tr key={`${key} ${changes.join(' ')}`}>
              <th scope="row">{label}</th>
              <td>
                <Outcome before={before} after={after} />
              </td>
              <td>
                <Becomes before={quantity(before)} after={quantity(after)} />
              </td>
              <td>
                <Becomes before={rating(before)} after={rating(after)} />
              </td>
              <td>
                {before && after && !changes.includes('sizes') ? (
                  <span class="faded">as now</span>
                ) : (
                  <Becomes before={sizes(before, kinds)} after={sizes(after, kinds)} />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Outcome({ before, after }: { before: LineStand | undefined; after: LineStand | undefined }) {
  if (!after) return <StateMark state="plain" word="not needed any more" />;
  const was = before && before.missing > 0 ? ` (now ${shortSentence(before.missing).toLowerCase()})` : '';
  return (
    <>
      {after.missing > 0 ? (
        <StateMark state="refused" word={shortSentence(after.missing)} />
      ) : (
        <StateMark state="ok" word={before ? 'Met' : 'New, and met'} />
      )}
      {was}
    </>
  );
}

function quantity(stand: LineStand | undefined): string {
  return stand ? String(stand.quantity) : NONE;
}

function rating(stand: LineStand | undefined): string {
  return stand?.rating ? needFigure(stand.rating.value, stand.rating.unit) : NONE;
}

function sizes(stand: LineStand | undefined, kinds: Kinds): string {
  if (!stand || stand.dimensions.length === 0) return NONE;
  const known = kinds.find(({ kind }) => kind === stand.kind)?.dimensions ?? [];
  return stand.dimensions
    .map(({ dimension, rule, value }) => {
      const { label = dimension, unit = '' } = known.find(({ name }) => name === dimension) ?? {};
      return `${label} ${SIZE_WORDS[rule]} ${figure(value, unit)}`;
    })
    .join(', ');
}
