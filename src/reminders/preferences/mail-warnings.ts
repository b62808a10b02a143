import { hearersOf, storesHeardWeekly, type Hearer } from '../../rules/reminders/addressees.js';

/** What keeps overdue gear from being told as it should, whoever chose what. */
export type MailWarning =
  /** No mail is sent at all. */
  | { readonly code: 'noMailServer' }
  /** Nobody chose to hear of these stores, and no manager has an address. */
  | { readonly code: 'nobodyTold'; readonly storeNames: readonly string[] }
  /** Nobody chose to hear of these stores, so the managers do whatever they chose. */
  | { readonly code: 'toldByDefault'; readonly storeNames: readonly string[] }
  /** Everybody who chose to hear of these stores does once a week, so overdue gear may wait so long to be told. */
  | { readonly code: 'toldWeekly'; readonly storeNames: readonly string[] }
  /** So many mails were given up of late: whoever they were for was not told. */
  | { readonly code: 'givenUp'; readonly mails: number };

/** The warnings as things stand. Where no mail is sent at all, who would get it is no matter. */
export function mailWarnings({
  isOpen,
  stores,
  people,
  givenUp,
}: {
  /** Whether mail can leave. */
  isOpen: boolean;
  /** The stores that keep gear. */
  stores: readonly { readonly id: number; readonly name: string }[];
  people: readonly Hearer[];
  /** How many mails were given up of late. */
  givenUp: number;
}): MailWarning[] {
  if (!isOpen) return [{ code: 'noMailServer' }];
  const heard = stores.map(({ id, name }) => ({ name, ...hearersOf(id, people) }));
  const named = (among: typeof heard) => among.map(({ name }) => name);
  const nobodyTold = named(heard.filter(({ personIds }) => personIds.length === 0));
  const toldByDefault = named(heard.filter(({ personIds, byDefault }) => byDefault && personIds.length > 0));
  const weekly = storesHeardWeekly(
    stores.map(({ id }) => id),
    people,
  );
  const toldWeekly = stores.filter(({ id }) => weekly.includes(id)).map(({ name }) => name);
  return [
    ...(nobodyTold.length > 0 ? [{ code: 'nobodyTold' as const, storeNames: nobodyTold }] : []),
    ...(givenUp > 0 ? [{ code: 'givenUp' as const, mails: givenUp }] : []),
    ...(toldByDefault.length > 0 ? [{ code: 'toldByDefault' as const, storeNames: toldByDefault }] : []),
    ...(toldWeekly.length > 0 ? [{ code: 'toldWeekly' as const, storeNames: toldWeekly }] : []),
  ];
}
