import type { ComponentChildren } from 'preact';
import { JobCrumbs, JobLinks } from '../jobs/job-links.view.js';
import type { Actor } from '../people/actor.js';
import { markingText } from '../register/item-words.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import { SEVERITY_NAMES } from '../inspections/record-words.js';
import { page } from '../web/page.js';
import { count, day, EVENT_NAMES, shortDay } from '../web/sentences/words.js';
import type { FiledItemView, GearFileView } from './gear-file.dto.js';
import type { TracedRecordView } from './trace.dto.js';
import { recordWords } from './trace.view.js';

interface GearFilePage {
  readonly me: Actor;
  readonly file: GearFileView;
  readonly kinds: readonly KindDefinition[];
}

/** The complete file of a job's gear, made to be printed and kept with the papers of the job. */
export function gearFilePage({ me, file, kinds }: GearFilePage): string {
  const { jobId, reference, name, site, loadOutDay, backDay, storeName, cancelled, items, lifts } = file;
  const lines = [...new Set(items.map(({ lineLabel }) => lineLabel))];
  return page(
    { title: `Gear file of job ${reference}`, actor: me, path: `/jobs/${jobId}/gear-file` },
    <>
      <JobCrumbs job={{ id: jobId, reference }} />
      <h1>
        Gear file of job <span class="tag">{reference}</span>
      </h1>
      <p class="lede">
        {name}, {site}. {day(loadOutDay)} to {day(backDay)}, from {storeName}.{' '}
        {items.length === 0
          ? 'Nothing has gone out on it.'
          : `${count(items.length, 'item', 'items')} went out on it.`}
      </p>
      <JobLinks job={{ id: jobId, cancelled }} me={me} here="gear-file" />
      <div class="gear-file">
        <section>
          <h2>Lifts</h2>
          <p>
            {lifts.length === 0
              ? 'None counted.'
              : lifts.map(({ onDay, lifts: number }) => `${shortDay(onDay)}: ${number}`).join('; ')}
          </p>
        </section>
        {lines.map((label) => (
          <section key={label}>
            <h2>{label}</h2>
            <ul class="cards">
              {items
                .filter(({ lineLabel }) => lineLabel === label)
                .map((item) => (
                  <FiledItem key={`${item.itemId} ${item.from}`} item={item} kinds={kinds} />
                ))}
            </ul>
          </section>
        ))}
      </div>
    </>,
  );
}

const RETURNS: Readonly<Record<FiledItemView['state'], string>> = {
  out: 'not back yet',
  back: 'back',
  missing: 'did not come back',
};

function FiledItem({ item, kinds }: { item: FiledItemView; kinds: readonly KindDefinition[] }) {
  const { tag, maker, serial, batch, markings, from, through, state, returnRemarks } = item;
  const ratings = markings.map(markingText).join(', ');
  return (
    <li class="card">
      <h3>
        <a class="tag" href={`/register/${item.itemId}`}>
          {tag}
        </a>{' '}
        {kinds.find(({ kind }) => kind === item.kind)?.name ?? item.kind}
      </h3>
      <p>
        {ratings === '' ? 'No rating' : ratings}. {maker}, serial {serial ?? 'not known'}
        {batch === null ? '' : `, batch ${batch}`}. {item.storeName}.
      </p>
      <p>
        Out from {day(from)}; {RETURNS[state]}
        {through === undefined ? '' : ` on ${day(through)}`}
        {returnRemarks === null ? '' : `: ${returnRemarks}`}.
      </p>
      <Entries title="Inspections in force" none="None on record.">
        {item.inspections.map(recordLine)}
      </Entries>
      <Entries title="Checks before use" none="None on record.">
        {item.checks.map(recordLine)}
      </Entries>
      {item.defects.length === 0 ? null : (
        <Entries title="Defects" none="">
          {item.defects.map(({ id, severity, description, reportedOn }) => (
            <li key={id}>
              <a href={`/trace/defects/${id}`}>{description}</a> ({SEVERITY_NAMES[severity]},{' '}
              {day(reportedOn)})
            </li>
          ))}
        </Entries>
      )}
      {item.events.length === 0 ? null : (
        <Entries title="Events" none="">
          {item.events.map(({ type, happenedOn, remarks }) => (
            <li key={`${type} ${happenedOn}`}>
              {EVENT_NAMES[type]} on {day(happenedOn)}
              {remarks === '' ? '' : `: ${remarks}`}
            </li>
          ))}
        </Entries>
      )}
    </li>
  );
}

function recordLine(record: TracedRecordView) {
  return (
    <li key={record.id}>
      {recordWords(record)}: {record.outcome}
    </li>
  );
}

function Entries({
  title,
  none,
  children,
}: {
  title: string;
  none: string;
  children: readonly ComponentChildren[];
}) {
  return (
    <>
      <h4>{title}</h4>
      {children.length === 0 ? <p>{none}</p> : <ul>{children}</ul>}
    </>
  );
}
