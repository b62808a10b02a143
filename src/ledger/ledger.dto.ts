/** Where the history is broken. */
export class LedgerFaultView {
  number!: number;
  /** How: altered, missing, out_of_order or cut_off. */
  fault!: string;
}

/** What the check of the whole history found. */
export class LedgerCheckView {
  /** How many entries there are. */
  entries!: number;
  /** The hash of the newest entry: note it down somewhere else to prove later that nothing before it was changed. */
  head!: string;
  /** True when every entry is as it was written, in its order, with none missing. */
  whole!: boolean;
  /** The first entry that is wrong; absent when none is. */
  fault?: LedgerFaultView;
}

/** One entry of the history. */
export class LedgerEntryView {
  number!: number;
  at!: string;
  actorId!: number | null;
  actorName!: string;
  action!: string;
  subjectKind!: string;
  subjectId!: string;
  detail!: object;
  /** The fingerprint of the entry before. */
  previousHash!: string;
  /** SHA-256 over this entry's canonical JSON without this member (RFC 8785). */
  hash!: string;
}
