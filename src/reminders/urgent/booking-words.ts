import { nearDay } from '../../web/sentences/due-reason.js';
import { refusalSentence } from '../../web/sentences/refusal.js';
import type { MailLink } from '../mails/mail-content.js';
import type { ReplacedFlag } from './urgent-matter.js';

/** Why booked gear is not fit, each reason once, and for each job what to do. Where a danger was found it says so itself. */
export function bookingSentences(flags: readonly ReplacedFlag[], { found }: { found: boolean }): string[] {
  const refusals = flags.flatMap(({ booking }) => booking.refusals);
  const reasons = refusals.filter(({ code }) => !found || code !== 'quarantined').map(refusalSentence);
  return [...(reasons.length > 0 ? [[...new Set(reasons)].join(' ')] : []), ...flags.map(jobSentence)];
}

/** Where the jobs are looked at: where nothing is free to take instead, their plans. */
export function bookingLinks(flags: readonly ReplacedFlag[], address: string): MailLink[] {
  return flags.map(({ booking: { jobId, reference }, replacement }) =>
    replacement
      ? { text: `See job ${reference}`, href: `${address}/jobs/${jobId}` }
      : { text: `See the plan of job ${reference}`, href: `${address}/jobs/${jobId}/plan` },
  );
}

function jobSentence({ booking, replacement }: ReplacedFlag): string {
  const { reference, jobName, from, to, today, out } = booking;
  const job = `${out ? 'Out on' : 'Reserved for'} job ${reference}, ${jobName}, ${nearDay(from, today)} to ${nearDay(to, today)}`;
  if (!replacement) return `${job}: nothing else is fit and free, see its plan.`;
  const { tag, storeName } = replacement;
  return `${job}: ${out ? `exchange it for ${tag}` : `take ${tag} instead`}, from ${storeName}.`;
}
