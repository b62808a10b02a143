/** A value before and after a change: 'A → B', or the one value where it stays. Read aloud, the arrow is 'becomes'. */
export function Becomes({ before, after }: { before: string; after: string }) {
  if (before === after) return <span class="faded">{after}</span>;
  return (
    <>
      {before} <span aria-hidden="true">→</span>
      <span class="visually-hidden"> becomes</span> <strong>{after}</strong>
    </>
  );
}
