import { listed } from '../../web/sentences/words.js';
import type { DiaryEntry } from '../diary/diary-entry.js';
import { cutShort, fittingSubject, type MailContent, type MailSection } from '../mails/mail-content.js';
import { digestEntry } from './digest-entry.js';
import type { DigestFacts } from './digest-facts.js';
import { digestSubject } from './digest-subject.js';
import { oldNewsSection, overdueSections } from './overdue-sections.js';
import type { TellingStore } from './told-entries.js';
import { visitSection } from './visit-section.js';

/** What a person reads in the morning: what is newly overdue, what falls due by the visit that clears it, and what is overdue still. */
export function digestContent(facts: DigestFacts): MailContent {
  const { told, address } = facts;
  return {
    subject: fittingSubject(digestSubject(told)),
    sections: [...overdueSections(facts), ...dueSections(facts), ...oldNewsSection(facts)],
    footer: { why: why(facts), choose: { text: 'Choose which mail you get', href: `${address}/me/mail` } },
  };
}

function dueSections(facts: DigestFacts): MailSection[] {
  const due = told(facts).filter(({ overdue }) => !overdue);
  const sections = facts.visits.flatMap((visit) => visitSection(visit, due, facts));
  const reached = new Set(sections.flatMap(({ itemIds }) => itemIds));
  const byDay = [...sections].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  return [
    ...byDay.map(({ section }) => section),
    ...outSection(
      due.filter(({ itemId }) => !reached.has(itemId)),
      facts,
    ),
  ];
}

/** What no visit to a store reaches before it falls due. */
function outSection(due: readonly DiaryEntry[], facts: DigestFacts): MailSection[] {
  if (due.length === 0) return [];
  const entries = due.map((entry) => digestEntry(entry, facts));
  return [
    {
      title: `Falling due while out: ${due.length}`,
      grave: false,
      lead: 'No visit to the store reaches these in time. Exchange them, have them examined on site, or put them aside when they come back.',
      ...cutShort(entries, `${facts.address}/diary`),
    },
  ];
}

function told({ told }: DigestFacts): DiaryEntry[] {
  return told.map(({ entry }) => entry);
}

/** Only the stores that it says something of are named: somebody may hear of many. */
function why({ stores, told, person }: DigestFacts): string {
  const nameOf = new Map(told.map(({ entry }) => [entry.storeId, entry.storeName]));
  const names = (some: readonly TellingStore[]) =>
    listed(some.flatMap(({ storeId }) => nameOf.get(storeId) ?? []));
  const chosen = names(stores.filter(({ byDefault }) => !byDefault));
  const byDefault = names(stores.filter((store) => store.byDefault));
  return [
    `This is for ${person.name}`,
    ...(chosen ? [`, who hears of what falls due at ${chosen}`] : []),
    '.',
    ...(byDefault
      ? [` Nobody has chosen to hear of overdue gear at ${byDefault}, so every manager with an address does.`]
      : []),
  ].join('');
}
