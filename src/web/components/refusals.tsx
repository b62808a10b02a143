import type { Refusal } from '../../rules/fitness/refusal.js';
import { refusalSentence } from '../sentences/refusal.js';

/** Every reason an item is refused for, one sentence each. */
export function Refusals({ refusals }: { refusals: readonly Refusal[] }) {
  return (
    <ul class="refusals">
      {refusals.map((refusal, index) => (
        <li key={index}>
          <span class="state state-refused" aria-hidden="true">
            ✕
          </span>{' '}
          {refusalSentence(refusal)}
        </li>
      ))}
    </ul>
  );
}
