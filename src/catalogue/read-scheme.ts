import type { DatedTriggers, InspectionRequirement, SchemeDefinition, Trigger } from '../rules/due/scheme.js';
import { EVENT_TYPES, INSPECTION_TYPES } from '../rules/gear/gear.js';
import { readCitation, type Sources } from './read-source.js';
import type { Reader } from './reader.js';

/** What a scheme may refer to: the sources and the kinds of the catalogue. */
export interface Known {
  readonly sources: Sources;
  readonly kinds: readonly string[];
}

const MONTHS = { from: 1, to: 120 };
const LIFTS = { from: 1, to: 1_000_000 };

/**
 * Reads `config/schemes/<scheme>.yaml`. `scheme` is the name of the file, and the file must say the same. A kind that
 * no inspection names may be registered, and is refused for every duty there: nobody knows what keeps it fit.
 */
export function readScheme(reader: Reader, scheme: string, known: Known): SchemeDefinition {
  reader.expectKeys(['scheme', 'name', 'caution', 'inspections']);
  reader.at('scheme').readOneOf([scheme], 'scheme of this file name');
  const ids = new Set<string>();
  const inspections = reader.at('inspections').readList((entry) => {
    const requirement = readRequirement(entry, scheme, known);
    if (ids.has(requirement.id))
      entry.at('id').refuse(`'${requirement.id}' is used twice`, 'give each inspection its own id');
    ids.add(requirement.id);
    return requirement;
  });
  return {
    scheme,
    name: reader.at('name').readText(),
    caution: reader.at('caution').readText(),
    inspections,
  };
}

function readRequirement(reader: Reader, scheme: string, known: Known): InspectionRequirement {
  const notedBefore = reader.noted();
  const idShape = {
    shape: new RegExp(`^${scheme}(\\.[a-z]+(-[a-z]+)*)+$`),
    advice: `start with '${scheme}.'`,
  };
  reader.expectKeys(['id', 'kinds', 'type', 'who', 'certificateRequired', 'entries']);
  const requirement: InspectionRequirement = {
    id: reader.at('id').readText(idShape),
    kinds: reader.at('kinds').readList((kind) => kind.readOneOf(known.kinds, 'kind')),
    type: reader.at('type').readOneOf(INSPECTION_TYPES, 'inspection type'),
    who: reader.at('who').readOneOf(['user', 'inspector', 'competentPerson'], 'person'),
    certificateRequired: reader.at('certificateRequired').readBoolean(),
    entries: reader.at('entries').readList((entry) => readEntry(entry, known.sources)),
  };
  if (reader.noted() === notedBefore) {
    refuseUnsorted(reader, requirement);
    refuseMismatch(reader, requirement);
  }
  return requirement;
}

function refuseUnsorted(reader: Reader, { entries }: InspectionRequirement): void {
  const late = entries.find(
    ({ validFrom }, index) => index > 0 && validFrom <= (entries[index - 1]?.validFrom ?? ''),
  );
  if (late)
    reader
      .at('entries')
      .refuse(`${late.validFrom} is out of order`, 'sort by validFrom, oldest first, each day once');
}

/** A pre-use check is due each shift and never by date, other inspections the other way round; examining takes competence. */
function refuseMismatch(reader: Reader, { type, who, entries }: InspectionRequirement): void {
  const isCheck = type === 'preUseCheck';
  const triggers = entries.flatMap((entry) => entry.triggers ?? []);
  if (triggers.some(({ when }) => (when === 'eachShift') !== isCheck)) {
    reader
      .at('entries')
      .refuse(`a trigger that does not go with ${type}`, 'pair eachShift with preUseCheck, and only so');
  }
  if ((type === 'thoroughExamination' || type === 'proofLoadTest') && who !== 'competentPerson') {
    reader.at('who').refuse(`'${who}' may not do a ${type}`, 'write competentPerson');
  }
}

function readEntry(reader: Reader, sources: Sources): DatedTriggers {
  reader.expectKeys(['validFrom', 'triggers', 'source', 'checkedOn']);
  const triggers = reader.at('triggers');
  return {
    validFrom: reader.at('validFrom').readDay(),
    triggers: triggers.isNull() ? null : triggers.readList(readTrigger),
    source: readCitation(reader.at('source'), sources),
    checkedOn: reader.at('checkedOn').readDay(),
  };
}

function readTrigger(reader: Reader): Trigger {
  const notedBefore = reader.noted();
  reader.expectKeys(['when'], ['months', 'declarationMonths', 'events', 'lifts']);
  const when = reader
    .at('when')
    .readOneOf(['interval', 'firstUse', 'afterEvent', 'everyLifts', 'afterIdle', 'eachShift'], 'trigger');
  if (reader.noted() > notedBefore) return { when: 'eachShift' };
  switch (when) {
    case 'interval':
    case 'afterIdle':
      reader.expectKeys(['when', 'months']);
      return { when, months: reader.at('months').readWhole(MONTHS) };
    case 'firstUse':
      reader.expectKeys(['when'], ['declarationMonths']);
      if (!reader.has('declarationMonths')) return { when };
      return { when, declarationMonths: reader.at('declarationMonths').readWhole(MONTHS) };
    case 'afterEvent':
      reader.expectKeys(['when', 'events']);
      return { when, events: reader.at('events').readList((event) => event.readOneOf(EVENT_TYPES, 'event')) };
    case 'everyLifts':
      reader.expectKeys(['when', 'lifts']);
      return { when, lifts: reader.at('lifts').readWhole(LIFTS) };
    case 'eachShift':
      reader.expectKeys(['when']);
      return { when };
  }
}
