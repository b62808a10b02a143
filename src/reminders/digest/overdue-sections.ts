import { compareNaturally } from '../../rules/allocation/natural-order.js';
import { isOverdueOut } from '../diary/diary-order.js';
import { cutShort, type MailEntry, type MailSection } from '../mails/mail-content.js';
import { digestEntry } from './digest-entry.js';
import { onlyExamines, type DigestFacts } from './digest-facts.js';
import type { ToldEntry } from './told-entries.js';

/** What must not be used and is news: first what is on a job all the same, then what lies in a store. */
export function overdueSections(facts: DigestFacts): MailSection[] {
  const overdue = facts.told.filter((told) => told.entry.overdue && !isOldNews(told));
  return [
    ...outSection(
      overdue.filter(({ entry }) => isOverdueOut(entry)),
      facts,
    ),
    ...inStoreSection(
      overdue.filter(({ entry }) => !isOverdueOut(entry)),
      facts,
    ),
  ];
}

function outSection(out: readonly ToldEntry[], facts: DigestFacts): MailSection[] {
  if (out.length === 0) return [];
  const entries = out.map(({ entry }) => digestEntry(entry, facts));
  return [
    {
      title: `Overdue and out on a job: ${out.length}`,
      grave: true,
      lead: onlyExamines(facts.person)
        ? 'Nobody may use these before they are examined: on site, or once they are back.'
        : 'Nobody may use these. Bring each back, exchange it, or have it examined on site.',
      ...cutShort(entries, `${facts.address}/diary`),
    },
  ];
}

function inStoreSection(inStore: readonly ToldEntry[], facts: DigestFacts): MailSection[] {
  if (inStore.length === 0) return [];
  const sayStore = facts.stores.length > 1;
  const entries = inStore.map(({ entry }) => digestEntry(entry, { ...facts, sayStore }));
  return [
    {
      title: `Overdue in store: ${inStore.length}`,
      grave: true,
      lead: onlyExamines(facts.person)
        ? 'Nobody may take these before they are examined.'
        : 'Put these aside and have them examined. Nobody may take them before that.',
      ...cutShort(entries, `${facts.address}/diary`),
    },
  ];
}

/** True of what was told as overdue before and keeps nobody from anything. */
export function isOldNews({ entry, fresh }: ToldEntry): boolean {
  return !fresh && entry.stops.length === 0 && !isOverdueOut(entry);
}

/** So many tags of a store are named; the diary has them all. */
const MOST_TAGS = 40;

/** Last and only by its tags what was told before, so that the new is seen. */
export function oldNewsSection({ told, address, person }: DigestFacts): MailSection[] {
  const known = told.filter(isOldNews).map(({ entry }) => entry);
  if (known.length === 0) return [];
  const stores = new Map(known.map(({ storeId, storeName }) => [storeId, storeName]));
  const entries = [...stores].map(([storeId, name]): MailEntry => {
    const tags = known.filter((entry) => entry.storeId === storeId).map(({ tag }) => tag);
    const rest = tags.length - MOST_TAGS;
    const named = tags.sort(compareNaturally).slice(0, MOST_TAGS).join(', ');
    return {
      title: { text: `${name}: ${tags.length}`, href: `${address}/diary?storeId=${storeId}` },
      sentences: [rest > 0 ? `${named} and ${rest} more.` : `${named}.`],
      links: [],
    };
  });
  return [
    {
      title: `Still overdue in store: ${known.length}`,
      grave: true,
      lead: onlyExamines(person)
        ? 'Told of before, and waiting for an examination.'
        : 'Told of before. Keep them aside and have them examined, or take them out of service.',
      entries: entries.sort((a, b) => compareNaturally(a.title.text, b.title.text)),
    },
  ];
}
