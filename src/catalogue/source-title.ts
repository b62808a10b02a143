import type { SourceDefinition } from './read-source.js';

/** A source by its title and edition; practice of the trade has no edition. */
export function sourceTitle({ title, edition, kind }: SourceDefinition): string {
  return kind === 'practice' ? title : `${title}, ${edition}`;
}
