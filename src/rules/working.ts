/** The key of an entry in `config/sources.yaml`; `common-practice` marks a fact of the trade with no source. */
export type SourceKey = string;

/** One number of a working, ready to print: `value` is exact decimal text, `unit` its symbol ('' for a bare number). */
export interface Figure {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
}

/** One step of arithmetic as a reader with a pocket calculator would want it: what went in, how, what came out, and who says so. */
export interface Working {
  readonly title: string;
  readonly formula: string;
  readonly inputs: readonly Figure[];
  readonly result: Figure;
  readonly source: SourceKey;
  readonly caution?: string;
}
