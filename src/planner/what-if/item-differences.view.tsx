import { Refusals } from '../../web/components/refusals.js';
import { Scroll } from '../../web/components/scroll.js';
import { StateMark, type StateKind } from '../../web/components/state-mark.js';
import type { UnfitHeldItem } from './compare-bookings.js';
import type { ItemDifference } from './compare-items.js';

const MARKS: Readonly<Record<ItemDifference['change'], { state: StateKind; word: string }>> = {
  joins: { state: 'ok', word: 'joins' },
  leaves: { state: 'plain', word: 'leaves' },
  moves: { state: 'away', word: 'moves' },
};

const WHY: Readonly<Record<Exclude<ItemDifference['reason'], undefined>, string>> = {
  not_fit: 'Not fit any more; the reasons stand above.',
  line_gone: 'Its line is not needed any more.',
  not_chosen: 'Still fit, but no longer chosen.',
};

interface ItemDifferencesProps {
  readonly items: readonly ItemDifference[];
  /** Items whose reasons are shown already. */
  readonly unfit: readonly UnfitHeldItem[];
}

/** The items that the plan takes up, gives up or puts on another line. */
export function ItemDifferences({ items, unfit }: ItemDifferencesProps) {
  if (items.length === 0) return <p>The gear chosen stays as it is.</p>;
  const shown = new Set(unfit.map(({ itemId }) => itemId));
  return (
    <Scroll label="Gear chosen that changes">
      <table>
        <caption>Gear chosen that changes</caption>
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col">What happens</th>
            <th scope="col">Line</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <tr key={item.itemId}>
              <th scope="row">
                <a class="tag" href={`/register/${item.itemId}`}>
                  {item.tag}
                </a>{' '}
                <span class="faded">{item.storeName}</span>
              </th>
              <td>
                <StateMark {...MARKS[item.change]} {...(item.reason === 'not_fit' && { state: 'refused' })} />
              </td>
              <td>{lineWords(item)}</td>
              <td>
                <Why item={item} isShown={shown.has(item.itemId)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Why({ item: { reason, refusals }, isShown }: { item: ItemDifference; isShown: boolean }) {
  if (!reason) return null;
  return refusals.length > 0 && !isShown ? <Refusals refusals={refusals} /> : <>{WHY[reason]}</>;
}

function lineWords({ before, after }: ItemDifference): string {
  if (before && after) return `from ${before.label.toLowerCase()} to ${after.label.toLowerCase()}`;
  return (after ?? before)?.label ?? '';
}
