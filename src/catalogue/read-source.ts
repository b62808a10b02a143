import { VERIFICATIONS, type Citation } from '../rules/citation.js';
import type { Reader } from './reader.js';

/** How binding a source is, the most binding first; practice has no text behind it. */
export const SOURCE_KINDS = ['law', 'standard', 'handbook', 'practice'] as const;

/** A published source as `config/sources.yaml` lists it, once. */
export interface SourceDefinition {
  readonly key: string;
  readonly title: string;
  readonly publisher: string;
  /** Edition or year, such as 'SI 1998/2307' or '2010'. */
  readonly edition: string;
  readonly kind: (typeof SOURCE_KINDS)[number];
}

/** The sources known so far, by key. */
export type Sources = ReadonlyMap<string, SourceDefinition>;

const KEY_SHAPE = { shape: /^[a-z0-9]+(-[a-z0-9]+)*$/, advice: "write a key such as 'loler-1998'" };

/** Reads `config/sources.yaml`. */
export function readSources(reader: Reader): Map<string, SourceDefinition> {
  const sources = new Map<string, SourceDefinition>();
  for (const key of reader.keys()) {
    const entry = reader.at(key).expectKeys(['title', 'publisher', 'edition', 'kind']);
    if (!KEY_SHAPE.shape.test(key)) entry.refuse(`'${key}' is not a source key`, KEY_SHAPE.advice);
    sources.set(key, {
      key,
      title: entry.at('title').readText(),
      publisher: entry.at('publisher').readText(),
      edition: entry.at('edition').readText(),
      kind: entry.at('kind').readOneOf(SOURCE_KINDS, 'kind of source'),
    });
  }
  return sources;
}

/** Reads a citation. A published source must say how the value was verified; common practice has nothing to verify. */
export function readCitation(reader: Reader, sources: Sources): Citation {
  const notedBefore = reader.noted();
  reader.expectKeys(['key'], ['clause', 'page', 'verified']);
  const key = reader.at('key').readOneOf([...sources.keys()], 'source');
  if (reader.noted() === notedBefore) refuseMisverified(reader, sources.get(key));
  return {
    key,
    ...(reader.has('clause') && { clause: reader.at('clause').readText() }),
    ...(reader.has('page') && { page: reader.at('page').readText() }),
    ...(reader.has('verified') && {
      verified: reader.at('verified').readOneOf(VERIFICATIONS, 'verification'),
    }),
  };
}

function refuseMisverified(reader: Reader, source: SourceDefinition | undefined): void {
  if (source?.kind === 'practice') {
    if (reader.has('verified'))
      reader.at('verified').refuse('practice has no text to verify', 'leave it out');
  } else if (!reader.has('verified')) {
    reader.refuse('missing verified', `write one of: ${VERIFICATIONS.join(', ')}`);
  }
}

/** A caution with its source. */
export interface CitedText {
  readonly text: string;
  readonly source: Citation;
}

/** Reads one caution. */
export function readCitedText(reader: Reader, sources: Sources): CitedText {
  reader.expectKeys(['text', 'source']);
  return { text: reader.at('text').readText(), source: readCitation(reader.at('source'), sources) };
}
