import type { DocumentView } from '../documents/documents.dto.js';
import { DocumentSection } from '../documents/documents.view.js';
import type { Actor } from '../people/actor.js';
import type { Role } from '../people/role.js';
import type { DueReport } from '../rules/due/due-date.js';
import type { Verdict } from '../rules/fitness/fitness.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { SourceKey } from '../rules/working.js';
import { CONDITION_WORDS, CURRENCY_WORDS, custodyWord } from '../register/item-words.js';
import type { ItemView } from '../register/register.dto.js';
import type { Standing } from '../register/standings.service.js';
import { idleSentence } from '../web/sentences/idle.js';
import { Refusals } from '../web/components/refusals.js';
import { StateMark } from '../web/components/state-mark.js';
import { Workings } from '../web/components/workings.js';
import { page } from '../web/page.js';
import { count, day, DUTY_NAMES, EVENT_NAMES, INSPECTION_NAMES } from '../web/sentences/words.js';
import type { DefectView, EventView, HistoryLineView, InspectionView } from './inspections.dto.js';
import { DefectTable, EventTable, HistoryTable, InspectionTable } from './item-tables.js';
import { LoadChartSection } from './load-chart-section.js';
import { MissingReport } from './missing-report.js';
import { RatingPlate } from './rating-plate.js';

interface ItemPage {
  readonly me: Actor;
  readonly item: ItemView;
  readonly kind: KindDefinition;
  readonly standing: Standing;
  readonly verdict: Verdict;
  readonly inspections: readonly InspectionView[];
  readonly defects: readonly DefectView[];
  readonly events: readonly EventView[];
  readonly documents: readonly DocumentView[];
  readonly history: readonly HistoryLineView[];
  readonly sources: (key: SourceKey) => string;
}

/** One item: its rating plate, whether it may be used today, and everything on record. */
export function itemPage(props: ItemPage): string {
  const { me, item, kind, inspections, defects, events, history } = props;
  return page(
    { title: `${item.tag}, ${kind.name}`, actor: me, path: `/register/${item.id}` },
    <>
      <p class="crumbs">
        <a href="/register">Register</a> › <a href={`/stores/${item.storeId}`}>{item.storeName}</a>
      </p>
      <RatingPlate item={item} kind={kind} />
      <States item={item} />
      <Today {...props} />
      <Actions me={me} item={item} />
      <div class="two-columns">
        <Dates {...props} />
        <Promises {...props} />
      </div>
      {kind.loadChart === true ? <LoadChartSection item={item} /> : null}
      <DefectTable defects={defects} />
      <InspectionTable
        inspections={inspections}
        itemId={item.id}
        mayCorrect={me.roles.includes('competentPerson')}
      />
      <EventTable events={events} />
      <DocumentSection
        me={me}
        itemId={item.id}
        records={inspections.filter(({ superseded }) => !superseded)}
        documents={props.documents}
      />
      <Cautions kind={kind} />
      <HistoryTable history={history} />
    </>,
  );
}

function States({ item }: { item: ItemView }) {
  return (
    <p class="actions">
      <StateMark {...CONDITION_WORDS[item.condition]} /> <StateMark {...CURRENCY_WORDS[item.currency]} />{' '}
      <StateMark {...custodyWord(item.custody)} />
    </p>
  );
}

/** The one question, for today and the item's own duty. Where it is promised is told apart, below. */
function Today(props: ItemPage) {
  const { me, item, kind, verdict, inspections } = props;
  const refusals = verdict.refusals.filter(
    ({ code }) => code !== 'promised_elsewhere' && code !== 'not_back_yet',
  );
  const duty = kind.duties[0];
  if (refusals.length === 0) {
    return (
      <section class="note note-ok">
        <h2 class="note-title">
          <StateMark state="ok" word={`Fit for ${duty ? DUTY_NAMES[duty] : 'use'} today, by its papers`} />
        </h2>
        <p>Look it over before you use it: what the eye finds counts more than what the papers say.</p>
      </section>
    );
  }
  return (
    <section class="note note-refused">
      <h2 class="note-title">Not to be used today</h2>
      <Refusals refusals={refusals} />
      {refusals.some(({ code }) => code === 'certificate_missing') ? (
        <MissingReport me={me} itemId={item.id} inspections={inspections} />
      ) : null}
      {item.conditionReason === null ? null : (
        <p>
          {item.conditionSince === null ? '' : `Since ${day(item.conditionSince)}: `}
          {item.conditionReason}
        </p>
      )}
    </section>
  );
}

interface Action {
  readonly path: string;
  readonly label: string;
  readonly look: string;
  readonly roles?: readonly Role[];
}

const ACTIONS: readonly Action[] = [
  { path: 'check', label: 'Check before use', look: 'button' },
  { path: 'defect', label: 'Report a defect', look: 'button' },
  { path: 'examination', label: 'Examine thoroughly', look: 'button quiet', roles: ['competentPerson'] },
  {
    path: 'inspection',
    label: 'Record an inspection',
    look: 'button quiet',
    roles: ['competentPerson', 'storeman', 'manager'],
  },
  { path: 'event', label: 'Record an event', look: 'button quiet' },
  { path: 'quarantine', label: 'Quarantine', look: 'button quiet' },
  {
    path: 'repair',
    label: 'Send to repair',
    look: 'button quiet',
    roles: ['competentPerson', 'storeman', 'manager'],
  },
  { path: 'label', label: 'Print its label', look: 'button quiet', roles: ['storeman', 'manager'] },
  { path: 'edit', label: 'Change the record', look: 'button quiet', roles: ['storeman', 'manager'] },
  { path: 'scrap', label: 'Scrap', look: 'button quiet', roles: ['competentPerson', 'manager'] },
];

function Actions({ me, item }: { me: Actor; item: ItemView }) {
  if (item.condition === 'scrapped') return null;
  const hidden = { quarantine: item.condition !== 'inService', repair: item.condition === 'underRepair' };
  const offered = ACTIONS.filter(({ roles }) => !roles || roles.some((role) => me.roles.includes(role)));
  return (
    <nav class="actions" aria-label={`What to do with ${item.tag}`}>
      {offered
        .filter(({ path }) => !Object.entries(hidden).some(([name, isHidden]) => name === path && isHidden))
        .map(({ path, label, look }) => (
          <a key={path} class={look} href={`/register/${item.id}/${path}`}>
            {label}
          </a>
        ))}
    </nav>
  );
}

function Dates({ standing: { report }, sources }: Pick<ItemPage, 'standing' | 'sources'>) {
  return (
    <section class="sheet">
      <h2>Due dates</h2>
      {report.dueOn === undefined ? null : (
        <p>In date through {day(report.dueOn)}, by the earliest of what follows.</p>
      )}
      {report.inspections.length === 0 ? (
        <p>
          {report.hasRule
            ? 'The rules of its store ask for the check before use only.'
            : 'The rules of its store say nothing about it.'}
        </p>
      ) : null}
      {report.inspections.map((due) => (
        <InspectionDates key={due.requirementId} due={due} sources={sources} />
      ))}
      {report.defectDeadline === undefined ? null : (
        <p>A defect allows use through {day(report.defectDeadline)} only.</p>
      )}
      {report.cautions.map((caution) => (
        <p class="caution-line" key={caution}>
          {CAUTION_SENTENCES[caution]}
        </p>
      ))}
    </section>
  );
}

const CAUTION_SENTENCES: Readonly<Record<DueReport['cautions'][number], string>> = {
  inspection_in_future_ignored: 'A record dated in the future was left out.',
  long_idle: 'It has lain idle for long: have it inspected before it is used, as said above.',
  written_scheme_ignored: 'A longer interval of its own was left out: it names no scheme of examination.',
};

function InspectionDates({
  due,
  sources,
}: {
  due: DueReport['inspections'][number];
  sources: (key: SourceKey) => string;
}) {
  const { type, lastDoneOn, dueOn, neverExamined, afterEvent, lifts, idle, workings } = due;
  const name = INSPECTION_NAMES[type];
  return (
    <>
      <h3>{`${name[0]?.toUpperCase()}${name.slice(1)}`}</h3>
      <p>
        {neverExamined ? 'Never done: it has to be done before first use.' : null}
        {lastDoneOn === undefined ? null : `Last done on ${day(lastDoneOn)}. `}
        {dueOn === undefined ? null : `Due on ${day(dueOn)}.`}
        {isAskedAfterEventsOnly(due)
          ? 'Asked for after certain events only, and none has happened since.'
          : null}
        {afterEvent === undefined
          ? null
          : ` Due again: ${EVENT_NAMES[afterEvent.type]} on ${day(afterEvent.on)}.`}
        {lifts === undefined ? null : liftsWords(lifts)}
        {idle === undefined ? null : ` ${idleSentence(idle)}`}
      </p>
      {workings.length === 0 ? (
        <p class="source">Source: {sources(due.source.key)}</p>
      ) : (
        <details>
          <summary>How that was worked out</summary>
          <Workings workings={workings} sources={sources} />
        </details>
      )}
    </>
  );
}

function isAskedAfterEventsOnly({
  neverExamined,
  dueOn,
  afterEvent,
  lifts,
  idle,
}: DueReport['inspections'][number]): boolean {
  const isSilent = [dueOn, afterEvent, lifts, idle].every((said) => said === undefined);
  return !neverExamined && isSilent;
}

function liftsWords({
  counted,
  allowed,
  usedUpOn,
}: NonNullable<DueReport['inspections'][number]['lifts']>): string {
  const made = ` ${counted} of ${count(allowed, 'lift', 'lifts')} made since.`;
  return usedUpOn === undefined ? made : `${made} Used up on ${day(usedUpOn)}: due before the next lift.`;
}

function Promises({ item, standing: { promises } }: Pick<ItemPage, 'item' | 'standing'>) {
  return (
    <section class="sheet">
      <h2>Where it is promised</h2>
      {promises.length === 0 ? <p>To no job.</p> : null}
      <ul>
        {promises.map(({ jobId, jobReference, from, to, out, late }) => (
          <li key={`${jobId}-${from}`}>
            <a href={`/jobs/${jobId}`}>{jobReference}</a>: {day(from)} to {day(to)}
            {out ? (late ? ', out and overdue' : ', out now') : ', reserved'}
          </li>
        ))}
      </ul>
      {item.notes === '' ? null : (
        <>
          <h2>Notes</h2>
          <p>{item.notes}</p>
        </>
      )}
    </section>
  );
}

function Cautions({ kind }: { kind: KindDefinition }) {
  return (
    <section class="sheet">
      <h2>Cautions</h2>
      <ul>
        {kind.cautions.map(({ text }) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
