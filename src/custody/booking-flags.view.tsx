import type { JobView } from '../jobs/jobs.dto.js';
import { Refusals } from '../web/components/refusals.js';
import { count } from '../web/sentences/words.js';
import type { BookingView } from './booking.dto.js';

/** What is wrong with a booking, and what to do about it. Nothing when it is as it should be. */
export function BookingFlagsNote({ job, booking }: { job: Pick<JobView, 'id'>; booking: BookingView }) {
  const { unfit, surplus, shortLines } = booking;
  if (unfit.length + surplus.length + shortLines.length === 0) return null;
  return (
    <section class="note note-refused" aria-label="Flags">
      <p class="note-title">
        <span class="mark" aria-hidden="true">
          ✕
        </span>{' '}
        The booking needs a second look
      </p>
      {unfit.map(({ item, lineLabel, refusals, replacement }) => (
        <div key={item.id}>
          <p>
            <a class="tag" href={`/register/${item.itemId}`}>
              {item.tag}
            </a>{' '}
            ({item.state}) is no longer fit for {lineLabel.toLowerCase()}.{' '}
            {replacement
              ? `Take ${replacement.tag} from ${replacement.storeName} instead.`
              : 'Nothing else is fit and free: see the plan.'}
          </p>
          <Refusals refusals={refusals} />
        </div>
      ))}
      {shortLines.map(({ lineKey, label, missing, proposed }) => (
        <p key={lineKey}>
          {label}: {count(missing, 'item is', 'items are')} lacking.{' '}
          {proposed.length > 0
            ? `Take ${proposed.map(({ tag }) => tag).join(', ')}.`
            : 'Nothing else is fit and free: see the plan.'}
        </p>
      ))}
      {surplus.length > 0 ? <p>No longer needed: {surplus.map(({ tag }) => tag).join(', ')}.</p> : null}
      <p class="actions">
        <a class="button" href={`/jobs/${job.id}/plan`}>
          See the new plan
        </a>
      </p>
    </section>
  );
}
