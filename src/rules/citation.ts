import type { SourceKey } from './working.js';

/**
 * How a cited value was checked: seen in the published text itself, seen in a reproduction or sister text of it,
 * or written from memory and still to be looked up.
 */
export const VERIFICATIONS = ['read', 'readInReproduction', 'memory'] as const;
export type Verification = (typeof VERIFICATIONS)[number];

/** Where a fact of the catalogue comes from: a key of `config/sources.yaml` with the place inside it. */
export interface Citation {
  readonly key: SourceKey;
  readonly clause?: string;
  readonly page?: string;
  /** Absent only for common practice, which has no text to check against. */
  readonly verified?: Verification;
}
