/** How a state stands to the question 'may I use it?'. */
export type StateKind = 'ok' | 'due' | 'refused' | 'away' | 'plain';

const SHAPES: Readonly<Record<StateKind, string>> = {
  ok: '●',
  due: '◐',
  refused: '✕',
  away: '↗',
  plain: '○',
};

/** A state as word, shape and colour together: none of the three is needed to read it. */
export function StateMark({ state, word }: { state: StateKind; word: string }) {
  return (
    <span class={`state state-${state}`}>
      <span aria-hidden="true">{SHAPES[state]}</span> {word}
    </span>
  );
}
