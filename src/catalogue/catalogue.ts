import type { SchemeDefinition } from '../rules/due/scheme.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { MethodDefinition } from '../rules/lines/method.js';
import type { SourceDefinition } from './read-source.js';

/** Something asked for by a name that the config folder does not define. */
export class UnknownEntryError extends Error {
  override readonly name = 'UnknownEntryError';

  constructor(
    readonly what: 'kind' | 'scheme' | 'method' | 'source',
    readonly asked: string,
    readonly known: readonly string[],
  ) {
    super(`There is no ${what} '${asked}' in the catalogue. Known: ${known.join(', ')}`);
  }
}

/** The contents of a catalogue, each list in the order it is to be shown. */
export interface CatalogueContents {
  readonly sources: readonly SourceDefinition[];
  readonly kinds: readonly KindDefinition[];
  readonly schemes: readonly SchemeDefinition[];
  readonly methods: readonly MethodDefinition[];
}

/** The facts of `config/`, checked as a whole when they were loaded. Never changes while the server runs. */
export class Catalogue {
  constructor(private readonly contents: CatalogueContents) {}

  kinds(): readonly KindDefinition[] {
    return this.contents.kinds;
  }

  schemes(): readonly SchemeDefinition[] {
    return this.contents.schemes;
  }

  methods(): readonly MethodDefinition[] {
    return this.contents.methods;
  }

  sources(): readonly SourceDefinition[] {
    return this.contents.sources;
  }

  /** @throws UnknownEntryError */
  kind(kind: string): KindDefinition {
    return found('kind', kind, this.contents.kinds, (entry) => entry.kind);
  }

  /** @throws UnknownEntryError */
  scheme(scheme: string): SchemeDefinition {
    return found('scheme', scheme, this.contents.schemes, (entry) => entry.scheme);
  }

  /** @throws UnknownEntryError */
  method(method: string): MethodDefinition {
    return found('method', method, this.contents.methods, (entry) => entry.method);
  }

  /** @throws UnknownEntryError */
  source(key: string): SourceDefinition {
    return found('source', key, this.contents.sources, (entry) => entry.key);
  }
}

function found<Entry>(
  what: UnknownEntryError['what'],
  asked: string,
  entries: readonly Entry[],
  nameOf: (entry: Entry) => string,
): Entry {
  const entry = entries.find((candidate) => nameOf(candidate) === asked);
  if (entry === undefined) throw new UnknownEntryError(what, asked, entries.map(nameOf));
  return entry;
}
