import { Scroll } from '../web/components/scroll.js';
import type { SourceDefinition } from '../catalogue/read-source.js';
import type { Actor } from '../people/actor.js';
import type { Day } from '../rules/calendar/day.js';
import type { Trigger, SchemeDefinition, InspectionRequirement } from '../rules/due/scheme.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { MethodDefinition } from '../rules/lines/method.js';
import { page } from '../web/page.js';
import { Checklist } from './checklist.view.js';
import { citation } from './citation.view.js';
import { count, DUTY_NAMES, EVENT_NAMES, INSPECTION_NAMES, MEASURE_NAMES } from '../web/sentences/words.js';

interface RulesPage {
  readonly me: Actor;
  /** The day whose values are shown. */
  readonly today: Day;
  readonly kinds: readonly KindDefinition[];
  readonly schemes: readonly SchemeDefinition[];
  readonly methods: readonly MethodDefinition[];
  readonly sources: readonly SourceDefinition[];
}

/** Everything the tool holds to be true, with the source of each fact. */
export function rulesPage({ me, today, kinds, schemes, methods, sources }: RulesPage): string {
  return page(
    { title: 'Rules', actor: me, path: '/rules' },
    <>
      <h1>Rules</h1>
      <p class="lede">
        What Tackleroom holds to be true, and where each fact comes from. Local law, the maker's instructions
        and a competent person come before anything on this page.
      </p>
      <nav aria-label="On this page" class="actions">
        {schemes.map(({ scheme, name }) => (
          <a key={scheme} href={`#${scheme}`}>
            {name}
          </a>
        ))}
        <a href="#kinds">Kinds of gear</a>
        <a href="#methods">Methods</a>
        <a href="#sources">Sources</a>
      </nav>
      {schemes.map((scheme) => (
        <Scheme key={scheme.scheme} scheme={scheme} today={today} kinds={kinds} sources={sources} />
      ))}
      <Kinds kinds={kinds} sources={sources} />
      <Methods methods={methods} sources={sources} />
      <SourceList sources={sources} />
    </>,
  );
}

function Scheme({
  scheme,
  today,
  kinds,
  sources,
}: { scheme: SchemeDefinition } & Pick<RulesPage, 'today' | 'kinds' | 'sources'>) {
  const caption = `Inspections asked for in ${scheme.name}`;
  return (
    <section class="sheet" id={scheme.scheme}>
      <h2>{scheme.name}</h2>
      <p class="caution-line">{scheme.caution}</p>
      <Scroll label={caption}>
        <table class="stacked">
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">Gear</th>
              <th scope="col">Inspection</th>
              <th scope="col">When</th>
              <th scope="col">By</th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {scheme.inspections.map((requirement) => (
              <Requirement
                key={requirement.id}
                requirement={requirement}
                today={today}
                kinds={kinds}
                sources={sources}
              />
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

const WHO: Readonly<Record<InspectionRequirement['who'], string>> = {
  user: 'the user',
  inspector: 'an inspector',
  competentPerson: 'a competent person',
};

function Requirement({
  requirement,
  today,
  kinds,
  sources,
}: { requirement: InspectionRequirement } & Pick<RulesPage, 'today' | 'kinds' | 'sources'>) {
  const entry = requirement.entries.findLast(({ validFrom }) => validFrom <= today);
  const names = requirement.kinds.map((kind) => kinds.find((known) => known.kind === kind)?.name ?? kind);
  return (
    <tr>
      <td data-label="Gear">{requirement.kinds.length === kinds.length ? 'Every kind' : names.join(', ')}</td>
      <td data-label="Inspection">
        {INSPECTION_NAMES[requirement.type]}
        {requirement.certificateRequired ? ', report on file' : ''}
      </td>
      <td data-label="When">
        {entry?.triggers ? entry.triggers.map(triggerWords).join('; ') : 'no longer asked for'}
      </td>
      <td data-label="By">{WHO[requirement.who]}</td>
      <td data-label="Source">{entry ? citation(entry.source, sources) : ''}</td>
    </tr>
  );
}

function triggerWords(trigger: Trigger): string {
  switch (trigger.when) {
    case 'eachShift':
      return 'before use, every shift';
    case 'interval':
      return `every ${count(trigger.months, 'month', 'months')}`;
    case 'everyLifts':
      return `every ${count(trigger.lifts, 'lift', 'lifts')}`;
    case 'afterIdle':
      return `before use after ${count(trigger.months, 'month', 'months')} or more in which it was neither out nor inspected`;
    case 'firstUse':
      return trigger.declarationMonths === undefined
        ? 'before first use'
        : `before first use, unless new with a maker's declaration at most ${count(trigger.declarationMonths, 'month', 'months')} old`;
    case 'afterEvent':
      return `again after it was ${trigger.events.map((event) => EVENT_NAMES[event]).join(', ')}`;
  }
}

function Kinds({ kinds, sources }: Pick<RulesPage, 'kinds' | 'sources'>) {
  return (
    <section id="kinds">
      <h2>Kinds of gear</h2>
      <ul class="cards">
        {kinds.map((kind) => (
          <li class="card" key={kind.kind}>
            <h3>{kind.name}</h3>
            <p>
              For {kind.duties.map((duty) => DUTY_NAMES[duty]).join(', ')}.{' '}
              {kind.rating
                ? `Rated by its ${MEASURE_NAMES[kind.rating.measure]} in ${kind.rating.units.join(', ')}.`
                : 'Carries no rating.'}
            </p>
            {kind.hitches ? (
              <ul>
                {kind.hitches.map(({ mode, label, bands, source }) => (
                  <li key={mode}>
                    Hitched {label}:{' '}
                    {bands
                      .map(({ throughDeg, factor }) =>
                        throughDeg === undefined
                          ? `× ${factor}`
                          : `× ${factor} to ${throughDeg}° from the vertical`,
                      )
                      .join(', ')}{' '}
                    <span class="source">({citation(source, sources)})</span>
                  </li>
                ))}
              </ul>
            ) : null}
            {kind.serviceLife ? (
              <p>
                Service life {kind.serviceLife.years} years ({citation(kind.serviceLife.source, sources)}).
              </p>
            ) : null}
            <ul>
              {kind.cautions.map(({ text, source }) => (
                <li key={text}>
                  {text} <span class="source">({citation(source, sources)})</span>
                </li>
              ))}
            </ul>
            <Checklist name={kind.name} points={kind.checklist} sources={sources} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Methods({ methods, sources }: Pick<RulesPage, 'methods' | 'sources'>) {
  return (
    <section id="methods">
      <h2>Methods</h2>
      {methods.map((method) => (
        <div class="sheet" key={method.method}>
          <h3>{method.name}</h3>
          <p>{method.summary}</p>
          <ul>
            {method.lines.map((line) => (
              <li key={line.key}>
                {line.label}: {line.quantityPer} per {COUNTED[line.per]}
                {line.spares > 0 ? ` and ${count(line.spares, 'spare', 'spares')}` : ''}{' '}
                <span class="source">({citation(line.source, sources)})</span>
              </li>
            ))}
          </ul>
          <ul>
            {method.cautions.map(({ text }) => (
              <li key={text} class="caution-line">
                {text}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

const COUNTED: Readonly<Record<MethodDefinition['lines'][number]['per'], string>> = {
  crew: 'crew',
  lifterInUse: 'lifter in use',
  panelOnWheels: 'panel on wheels',
  truckUnloading: 'truck being unloaded',
  personAloft: 'person aloft',
  job: 'job',
};

function SourceList({ sources }: Pick<RulesPage, 'sources'>) {
  return (
    <section class="sheet" id="sources">
      <h2>Sources</h2>
      <ul>
        {sources.map(({ key, title, publisher, edition, kind }) => (
          <li key={key} id={`source-${key}`}>
            {title}. {publisher}, {edition} ({kind}).
          </li>
        ))}
      </ul>
    </section>
  );
}
