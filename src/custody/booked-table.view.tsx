import { Scroll } from '../web/components/scroll.js';
import { Form } from '../web/components/form.js';
import { StateMark, type StateKind } from '../web/components/state-mark.js';
import { shortDay } from '../web/sentences/words.js';
import type { BookedState } from './booked-item.entity.js';
import type { BookedItemView, BookingView } from './booking.dto.js';

const MARKS: Readonly<Record<BookedState, StateKind>> = {
  reserved: 'ok',
  out: 'away',
  back: 'plain',
  missing: 'refused',
  released: 'plain',
};

/** The items of a booking with where each is. With `mayRelease`, what is only reserved can be given up. */
export function BookedTable({
  jobId,
  booking: { items, unfit },
  labels,
  mayRelease,
}: {
  jobId: number;
  booking: BookingView;
  /** The labels of the gear lines by key. */
  labels: ReadonlyMap<string, string>;
  mayRelease: boolean;
}) {
  const unfitIds = new Set(unfit.map(({ item }) => item.id));
  if (items.length === 0) return <p>Nothing is booked yet.</p>;
  return (
    <Scroll label="Booked gear">
      <table class="stacked">
        <caption>Booked gear</caption>
        <thead>
          <tr>
            <th scope="col">Tag</th>
            <th scope="col">For</th>
            <th scope="col">Store</th>
            <th scope="col">Days</th>
            <th scope="col">State</th>
            {mayRelease ? <th scope="col">Give up</th> : null}
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <tr key={item.id}>
              <th scope="row" data-label="Tag">
                <a class="tag" href={`/register/${item.itemId}`}>
                  {item.tag}
                </a>
              </th>
              <td data-label="For">{labels.get(item.lineKey) ?? item.lineKey}</td>
              <td data-label="Store">{item.storeName}</td>
              <td data-label="Days">
                {shortDay(item.fromDay)} to {shortDay(item.toDay)}
              </td>
              <td data-label="State">
                {unfitIds.has(item.id) ? (
                  <StateMark state="refused" word={`${item.state}, not fit any more`} />
                ) : (
                  <StateMark state={MARKS[item.state]} word={item.state} />
                )}
                {item.returnRemarks ? <p class="faded">{item.returnRemarks}</p> : null}
              </td>
              {mayRelease ? (
                <td data-label="Give up">
                  {item.state === 'reserved' ? <ReleaseButton jobId={jobId} item={item} /> : null}
                </td>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function ReleaseButton({ jobId, item }: { jobId: number; item: BookedItemView }) {
  return (
    <Form action={`/jobs/${jobId}/release`} label={`Give up ${item.tag}`}>
      <input type="hidden" name="bookedItemId" value={item.id} />
      <button type="submit" class="quiet" aria-label={`Release ${item.tag}`}>
        Release
      </button>
    </Form>
  );
}
