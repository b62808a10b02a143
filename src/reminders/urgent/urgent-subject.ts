import { listed } from '../../web/sentences/words.js';
import { gravityOf, type Gravity, type UrgentMatter } from './urgent-matter.js';

/** The gravest first; one thing by name and with what to do, several in figures. */
export function urgentSubject(matters: readonly UrgentMatter[]): string {
  const [only] = matters;
  if (only && matters.length === 1) return subjectOfOne(only);
  const of = (gravity: Gravity) => matters.filter((matter) => gravityOf(matter) === gravity);
  const parts = [
    named(of('danger'), {
      one: (name) => `Danger found on ${name}`,
      many: (items) => `Danger found on ${items} items`,
    }),
    named(of('batch'), {
      one: (name) => `${name} out of service`,
      many: (batches) => `${batches} batches out of service`,
    }),
    named(of('dangerByDate'), {
      one: (name) => `${name} a danger from a named day`,
      many: (items) => `${items} items a danger from a named day`,
    }),
    named(of('booking'), {
      one: (name) => `${name} not fit for ${jobsOf(of('booking'))}`,
      many: (items) => `${items} booked items not fit for ${jobsOf(of('booking'))}`,
    }),
  ];
  return parts.filter((part) => part !== '').join('; ');
}

function subjectOfOne(matter: UrgentMatter): string {
  const name = nameOf(matter);
  const gravity = gravityOf(matter);
  const rest = matter.flags.length > 0 ? `${whereOf(matter)}${insteadOf(matter)}` : '';
  switch (gravity) {
    case 'danger':
      return `Danger found on ${name}${rest}`;
    case 'batch':
      return `${name} out of service`;
    case 'dangerByDate':
      return `${name} becomes a danger on a named day${rest}`;
    case 'booking':
      return `${name} is not fit for ${jobsOf([matter])}${insteadOf(matter)}`;
  }
}

function named(
  matters: readonly UrgentMatter[],
  { one, many }: { one: (name: string) => string; many: (count: number) => string },
): string {
  const [first] = matters;
  if (!first) return '';
  return matters.length === 1 ? one(nameOf(first)) : many(matters.length);
}

function nameOf({ item, notices }: UrgentMatter): string {
  const batch = notices[0]?.batch;
  return item?.tag ?? `Batch ${batch?.batch ?? ''}`;
}

/** Of gear that is found dangerous: where it is wanted. */
function whereOf(matter: UrgentMatter): string {
  const isOut = matter.flags.some(({ booking }) => booking.out);
  return `, ${isOut ? 'out on' : 'reserved for'} ${jobsOf([matter])}`;
}

function insteadOf({ flags }: UrgentMatter): string {
  const [only] = flags;
  return only?.replacement && flags.length === 1 ? `: take ${only.replacement.tag}` : '';
}

function jobsOf(matters: readonly UrgentMatter[]): string {
  const references = [
    ...new Set(matters.flatMap(({ flags }) => flags.map(({ booking }) => booking.reference))),
  ];
  if (references.length > 3) return `${references.length} jobs`;
  return `${references.length === 1 ? 'job' : 'jobs'} ${listed(references)}`;
}
