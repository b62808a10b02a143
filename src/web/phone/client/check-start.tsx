import { useState } from 'preact/hooks';
import { CheckForm } from './check-form.js';
import { counted } from './counted.js';
import { answeredIn } from './draft.js';
import type { ItemOnPhone } from './kept-job.js';
import type { BegunCheck } from './store.js';
import { timeOf } from './time.js';
import type { ViewProps } from './view-props.js';

type StartProps = ViewProps & {
  readonly jobId: number;
  readonly timeZone: string;
  readonly found: ItemOnPhone;
};

/** The checklist of an item; where it was begun and not saved, first the question whether to go on from there. */
export function CheckStart(props: StartProps) {
  const { phone, found } = props;
  // What was begun when the item was opened: what is entered now is kept as begun as well, and is not asked about.
  const [begun, setBegun] = useState(found.begun);
  const [isAsked, setAsked] = useState(begun !== undefined);
  if (!begun || !isAsked) return <CheckForm {...props} begun={begun} />;
  const beginAgain = async () => {
    await phone.forgetBegun(begun);
    setBegun(undefined);
  };
  return (
    <section class="note begun">
      <h2>
        You began to check <span class="tag">{found.item.tag}</span> at {timeOf(begun.startedAt)}
      </h2>
      <p>
        {answeredIn(begun.draft)} of {counted(found.kind?.points.length ?? 0, 'point')} answered, nothing
        saved. Go on only if nobody has used it since.
      </p>
      {begun.photosLeftOut > 0 ? <p>{lostPhotos(begun)}</p> : null}
      <button type="button" class="big" onClick={() => setAsked(false)}>
        Go on
      </button>
      <button type="button" class="big quiet" onClick={() => void beginAgain()}>
        Begin again
      </button>
    </section>
  );
}

function lostPhotos({ photosLeftOut }: BegunCheck): string {
  const isOne = photosLeftOut === 1;
  return `${counted(photosLeftOut, 'photo')} ${isOne ? 'was' : 'were'} too large to keep: take ${isOne ? 'it' : 'them'} again.`;
}
