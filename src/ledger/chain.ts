import { createHash } from 'node:crypto';
import { canonicalJson } from './canonical-json.js';

/** The hash that stands before the first entry: 64 zeros. */
export const GENESIS_HASH = '0'.repeat(64);

/** An entry as it is hashed and exported. `detail` is the JSON value itself. */
export interface ChainEntry {
  readonly number: number;
  readonly at: string;
  readonly actorId: number | null;
  readonly actorName: string;
  readonly action: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly detail: unknown;
  readonly previousHash: string;
}

/** An entry with its hash, as it is kept. */
export interface SealedEntry extends ChainEntry {
  readonly hash: string;
}

/** The entry's hash in hexadecimal: SHA-256 (FIPS 180-4) over its canonical JSON (RFC 8785) in UTF-8. */
export function entryHash(entry: ChainEntry): string {
  return createHash('sha256').update(canonicalJson(entry), 'utf8').digest('hex');
}

/** Where the chain is broken, and how. */
export interface ChainFault {
  readonly number: number;
  readonly fault: 'altered' | 'missing' | 'out_of_order' | 'cut_off';
}

/**
 * Checks entries in the order of their numbers, from the first on, against the recorded end of the chain.
 * Gives the first fault, or undefined of a whole chain.
 */
export async function findFault(
  entries: AsyncIterable<SealedEntry>,
  head: { readonly number: number; readonly hash: string },
): Promise<ChainFault | undefined> {
  let expected = 1;
  let previousHash = GENESIS_HASH;
  for await (const { hash, ...entry } of entries) {
    if (entry.number !== expected) return { number: expected, fault: 'missing' };
    if (entryHash(entry) !== hash) return { number: entry.number, fault: 'altered' };
    if (entry.previousHash !== previousHash) return { number: entry.number, fault: 'out_of_order' };
    expected += 1;
    previousHash = hash;
  }
  if (expected - 1 !== head.number) return { number: Math.min(expected, head.number + 1), fault: 'cut_off' };
  return previousHash === head.hash ? undefined : { number: head.number, fault: 'altered' };
}
