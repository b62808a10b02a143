/** A link of a mail, with its whole address. */
export interface MailLink {
  readonly text: string;
  readonly href: string;
}

/** One thing to act on: which gear, in short sentences what is the matter and what to do, and where to look further. */
export interface MailEntry {
  readonly title: MailLink;
  readonly sentences: readonly string[];
  readonly links: readonly MailLink[];
}

/** Entries that call for the same. */
export interface MailSection {
  readonly title: string;
  /** True of what must not be used: set apart by a word in the title and a bar at its side. */
  readonly grave: boolean;
  /** What to do about all of them. */
  readonly lead?: string;
  readonly entries: readonly MailEntry[];
  /** Where the rest is, when the list was cut. */
  readonly more?: MailLink;
}

/** What a mail says, before it is written as HTML and as plain text. */
export interface MailContent {
  readonly subject: string;
  readonly sections: readonly MailSection[];
  readonly footer: {
    /** Why this person gets it. */
    readonly why: string;
    /** Where the person chooses how much mail comes. */
    readonly choose: MailLink;
  };
}

/** So many entries of a section are written out. */
const MOST_ENTRIES = 30;

/** The first entries of a long list, and a link to the rest: 'and 45 more'. */
export function cutShort(
  entries: readonly MailEntry[],
  restAt: string,
): Pick<MailSection, 'entries' | 'more'> {
  const rest = entries.length - MOST_ENTRIES;
  if (rest <= 0) return { entries };
  return { entries: entries.slice(0, MOST_ENTRIES), more: { text: `and ${rest} more`, href: restAt } };
}

/** The column of the mail table takes no more. */
const LONGEST_SUBJECT = 200;

/** A subject that fits its column, cut with an ellipsis. */
export function fittingSubject(subject: string): string {
  const letters = [...subject]; // whole characters: half of one cannot be written
  return letters.length <= LONGEST_SUBJECT ? subject : `${letters.slice(0, LONGEST_SUBJECT - 1).join('')}…`;
}

/** One line of caution that every mail ends with. */
export const MAIL_CAUTION =
  "A planning aid: it replaces neither the maker's instructions, local law, a competent person, nor a look at the gear.";
