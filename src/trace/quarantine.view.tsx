import type { Actor } from '../people/actor.js';
import { CONDITION_WORDS } from '../register/item-words.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { SEVERITY_NAMES } from '../inspections/record-words.js';
import { StateMark } from '../web/components/state-mark.js';
import { page } from '../web/page.js';
import { count, day } from '../web/sentences/words.js';
import type { WaitingItemView } from './quarantine.dto.js';

interface QuarantinePage {
  readonly me: Actor;
  readonly waiting: readonly WaitingItemView[];
  readonly kinds: readonly KindDefinition[];
}

/** What waits for whom: everything in quarantine or under repair, store by store. */
export function quarantinePage({ me, waiting, kinds }: QuarantinePage): string {
  const stores = new Map(waiting.map(({ storeId, storeName }) => [storeId, storeName]));
  return page(
    { title: 'Quarantine', actor: me, path: '/quarantine' },
    <>
      <h1>Quarantine</h1>
      <p class="lede">
        {waiting.length === 0
          ? 'Nothing is in quarantine or under repair.'
          : `${count(waiting.length, 'item waits', 'items wait')} in quarantine or under repair. Nobody uses or books any of it.`}
      </p>
      <p>
        Gear that waits stands in the quarantine place of its store, apart from what is in use. It comes back
        into service only when a competent person who did not report it has examined and released it. What was
        repaired is examined too. What is scrapped never comes back.
      </p>
      {[...stores].map(([storeId, storeName]) => {
        const items = waiting.filter((item) => item.storeId === storeId);
        return (
          <section key={storeId} id={`store-${storeId}`}>
            <h2>
              {storeName}, {items.length}
            </h2>
            <ul class="cards">
              {items.map((item) => (
                <WaitingCard key={item.itemId} me={me} item={item} kindName={nameOf(item.kind, kinds)} />
              ))}
            </ul>
          </section>
        );
      })}
    </>,
  );
}

function WaitingCard({ me, item, kindName }: { me: Actor; item: WaitingItemView; kindName: string }) {
  return (
    <li class="card">
      <h3>
        <a class="tag" href={`/register/${item.itemId}`}>
          {item.tag}
        </a>{' '}
        {kindName}
      </h3>
      <p>
        <StateMark {...CONDITION_WORDS[item.condition]} />
        {item.since === null ? '' : ` since ${day(item.since)}`}, reported by{' '}
        {item.reportedBy ?? 'Tackleroom itself'}.
      </p>
      {item.reason === null ? null : <p>{item.reason}</p>}
      <p>
        <strong>Waits for:</strong> {waitsFor(item)}
      </p>
      <p>{placeOf(item)}</p>
      {item.openDefects.length === 0 ? null : (
        <>
          <p>Open defects:</p>
          <ul>
            {item.openDefects.map(({ id, severity, description }) => (
              <li key={id}>
                <a href={`/trace/defects/${id}`}>{description}</a> ({SEVERITY_NAMES[severity]})
              </li>
            ))}
          </ul>
        </>
      )}
      <MissedBy item={item} />
      <Steps me={me} item={item} />
    </li>
  );
}

function waitsFor({ condition, mayExamine, reportedBy }: WaitingItemView): string {
  const whom =
    mayExamine.length === 0
      ? `a competent person other than ${reportedBy ?? 'its reporter'}. Nobody on the list of people may: ask a manager to enter one`
      : `${mayExamine.join(' or ')}`;
  const examination = `a thorough examination with release, by ${whom}.`;
  return condition === 'underRepair' ? `its repair, then ${examination}` : examination;
}

function placeOf({ jobs, storeName }: WaitingItemView): string {
  const away = jobs.find(({ out }) => out);
  return away
    ? `Still out on job ${away.reference}: set it apart on site and bring it to the quarantine place of ${storeName}.`
    : `In the quarantine place of ${storeName}.`;
}

function MissedBy({ item: { jobs } }: { item: WaitingItemView }) {
  if (jobs.length === 0) return null;
  return (
    <>
      <p>Missed by:</p>
      <ul>
        {jobs.map(({ jobId, reference, from, to }) => (
          <li key={`${jobId} ${from}`}>
            <a href={`/jobs/${jobId}`}>job {reference}</a>, {day(from)} to {day(to)}
          </li>
        ))}
      </ul>
    </>
  );
}

function Steps({ me, item }: { me: Actor; item: WaitingItemView }) {
  const may = (...roles: Actor['roles']) => roles.some((role) => me.roles.includes(role));
  const steps = [
    { path: 'examination', label: 'Examine thoroughly', shown: item.youMayExamine },
    { path: 'inspection', label: 'Record an examination', shown: item.youMayExamine },
    {
      path: 'repair',
      label: 'Send to repair',
      shown: item.condition === 'quarantined' && may('storeman', 'competentPerson', 'manager'),
    },
    { path: 'scrap', label: 'Scrap', shown: may('competentPerson', 'manager') },
  ].filter(({ shown }) => shown);
  if (steps.length === 0) return null;
  return (
    <p class="actions">
      {steps.map(({ path, label }) => (
        <a
          key={path}
          class="button quiet"
          href={`/register/${item.itemId}/${path}`}
          aria-label={`${label}: ${item.tag}`}
        >
          {label}
        </a>
      ))}
    </p>
  );
}

function nameOf(kind: string, kinds: readonly KindDefinition[]): string {
  return kinds.find((known) => known.kind === kind)?.name ?? kind;
}
