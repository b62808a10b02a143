import { StateMark } from '../../components/state-mark.js';
import type { ViewProps } from './view-props.js';
import { CheckStart } from './check-start.js';
import { Crumbs } from './crumbs.js';
import { keptJob, type ItemOnPhone } from './kept-job.js';
import { addressOf } from './place.js';

/** One item: its checklist, or why it may not be used. */
export function CheckView({ phone, send, jobId, itemId }: ViewProps & { jobId: number; itemId: number }) {
  const kept = keptJob(phone.snapshot, jobId);
  const found = kept?.items.find(({ item }) => item.id === itemId);
  return (
    <>
      <Crumbs href={addressOf({ at: 'job', jobId })} words="Gear of the job" me={phone.snapshot.me} />
      {kept && found ? (
        <>
          <Heading {...found} />
          {found.standing.mayBeChecked ? (
            <CheckStart
              phone={phone}
              send={send}
              jobId={jobId}
              timeZone={kept.bundle.timeZone}
              found={found}
            />
          ) : (
            <DoNotUse {...found} jobId={jobId} />
          )}
        </>
      ) : (
        <h1 tabIndex={-1}>This item is not on this phone</h1>
      )}
    </>
  );
}

function Heading({ item, kindName }: ItemOnPhone) {
  return (
    <>
      <h1 tabIndex={-1}>
        <span class="tag">{item.tag}</span> {kindName}
      </h1>
      {item.serial ? (
        <p>
          The label must say serial number <span class="tag">{item.serial}</span>.
        </p>
      ) : null}
    </>
  );
}

function DoNotUse({ standing, jobId }: ItemOnPhone & { jobId: number }) {
  return (
    <div class="note note-refused stop">
      <p class="note-title">
        <StateMark state="refused" word="Do not use" />
      </p>
      <ul>
        {standing.why.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p>
        Tie it off with a red mark, keep it apart, and tell the storeman. It cannot be passed on this phone;
        only a competent person can release it.
      </p>
      <p>
        <a class="button big" href={addressOf({ at: 'job', jobId })}>
          Back to the gear
        </a>
      </p>
    </div>
  );
}
