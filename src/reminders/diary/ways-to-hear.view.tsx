import { keepsJobs } from '../../jobs/job-words.js';
import type { Actor } from '../../people/actor.js';

/** Where one is told of what falls due without looking at the diary. */
export function WaysToHear({ me }: { me: Actor }) {
  const isCrewOnly = me.roles.every((role) => role === 'crew');
  return (
    <ul class="ways">
      <li>
        <a href="/me/mail">Be told by mail</a>
      </li>
      {isCrewOnly ? null : (
        <li>
          <a href="/calendar">Put it in your calendar</a>
        </li>
      )}
      {keepsJobs(me) ? (
        <li>
          <a href="/outbox">What was mailed</a>
        </li>
      ) : null}
    </ul>
  );
}
