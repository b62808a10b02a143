import type { SourceDefinition } from '../catalogue/read-source.js';
import type { Citation } from '../rules/citation.js';

/** A citation in words, with a link to the list of sources; one from memory says so. */
export function citation(
  { key, clause, page: place, verified }: Citation,
  sources: readonly SourceDefinition[],
) {
  const title = sources.find((source) => source.key === key)?.title ?? key;
  const where = [clause, place ? `p. ${place}` : ''].filter(Boolean).join(', ');
  return (
    <>
      <a href={`#source-${key}`}>{title}</a>
      {where ? `, ${where}` : ''}
      {verified === 'memory' ? ' (from memory, to be checked)' : ''}
    </>
  );
}
