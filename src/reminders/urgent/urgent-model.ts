import { batchAddress } from '../../register/item-words.js';
import { shortDay } from '../../web/sentences/words.js';
import {
  cutShort,
  fittingSubject,
  type MailContent,
  type MailEntry,
  type MailSection,
} from '../mails/mail-content.js';
import { bookingLinks, bookingSentences } from './booking-words.js';
import { gravityOf, type Gravity, type UrgentMatter } from './urgent-matter.js';
import { urgentSubject } from './urgent-subject.js';

/** What an urgent mail is made from. */
export interface UrgentFacts {
  readonly matters: readonly UrgentMatter[];
  readonly personName: string;
  /** The name of a kind as people read it. */
  readonly kindName: (kind: string) => string;
  /** The address of the server, without a slash at its end. */
  readonly address: string;
}

const GRAVITIES: readonly Gravity[] = ['danger', 'batch', 'dangerByDate', 'booking'];

const TITLES: Readonly<Record<Gravity, string>> = {
  danger: 'Danger found: do not use',
  batch: 'A whole batch is out of service',
  dangerByDate: 'A danger from a named day on',
  booking: 'Booked, but not fit any more',
};

const LEADS: Readonly<Record<Gravity, string>> = {
  danger: 'Put it aside and mark it. A competent person has to examine it before anybody uses it again.',
  batch: 'Put all of it aside and mark it. A competent person has to examine each item.',
  dangerByDate: 'Have it examined before that day, or take it out of service.',
  booking: 'Nobody may use these on their jobs. Exchange each, or put right what is wrong.',
};

/** What somebody has to hear at once: what was found, which jobs count on the gear, and what to take instead. */
export function urgentContent(facts: UrgentFacts): MailContent {
  const { matters, address, personName } = facts;
  return {
    subject: fittingSubject(urgentSubject(matters)),
    sections: GRAVITIES.flatMap((gravity) => section(gravity, facts)),
    footer: {
      why: `This is for ${personName}, who is told at once of dangers found and of booked gear that is not fit any more.`,
      choose: { text: 'Choose which mail you get', href: `${address}/me/mail` },
    },
  };
}

function section(gravity: Gravity, facts: UrgentFacts): MailSection[] {
  const entries = facts.matters
    .filter((matter) => gravityOf(matter) === gravity)
    .map((matter) => entryOf(matter, facts));
  if (entries.length === 0) return [];
  const rest = `${facts.address}${gravity === 'booking' ? '/jobs' : '/quarantine'}`;
  return [{ title: TITLES[gravity], lead: LEADS[gravity], grave: true, ...cutShort(entries, rest) }];
}

function entryOf(matter: UrgentMatter, { kindName, address }: UrgentFacts): MailEntry {
  const { item, notices, flags } = matter;
  return {
    title: item
      ? { text: `${item.tag}, ${kindName(item.kind).toLowerCase()}`, href: `${address}/register/${item.id}` }
      : batchLink(matter, address),
    sentences: [
      ...notices.flatMap(foundSentences),
      ...bookingSentences(flags, { found: notices.length > 0 }),
    ],
    links: bookingLinks(flags, address),
  };
}

function batchLink({ notices }: UrgentMatter, address: string): MailEntry['title'] {
  const { batch = '', maker = '', items = 0 } = notices[0]?.batch ?? {};
  return {
    text: `Batch ${batch} of ${maker}, ${items === 1 ? '1 item' : `${items} items`}`,
    href: address + batchAddress(batch, maker),
  };
}

function foundSentences({ what, by, lastDayOfUse }: UrgentMatter['notices'][number]): string[] {
  const found = `${by} found: ${sentence(what)}`;
  return lastDayOfUse === null ? [found] : [found, `Its last day of use is ${shortDay(lastDayOfUse)}.`];
}

/** What somebody wrote, on one line and with a stop at its end. */
function sentence(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return /[.!?]$/.test(line) ? line : `${line}.`;
}
