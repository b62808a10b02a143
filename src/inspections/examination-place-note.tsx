import type { SchemeDefinition } from '../rules/due/scheme.js';
import { RECORD_DUTIES, type RecordDuty } from '../rules/examination/places.js';

const DUTY_WORDS: Readonly<Record<RecordDuty['asks'], string>> = {
  wholeReport: 'the whole report',
  lastThoroughInspection: 'a record of when it was last thoroughly inspected',
  proofTest: 'a proof test before first use of what was made for one purpose',
  registerEntry: 'an entry in a register with first use, last examination and last test',
};

/** Where the list of the report comes from, and what the place of the store is known to ask of a record. */
export function PlaceNote({ scheme }: { scheme: SchemeDefinition }) {
  const duties = RECORD_DUTIES[scheme.scheme] ?? [];
  if (duties.some(({ asks }) => asks === 'wholeReport')) {
    return <p class="source">The numbers are the paragraphs of LOLER 1998 (SI 1998/2307) Schedule 1.</p>;
  }
  return (
    <div class="note">
      <p>
        The numbers are the paragraphs of LOLER 1998 (SI 1998/2307) Schedule 1. It is the law of Great Britain
        and serves here as the fullest list on record: for {scheme.name} no list of what a report holds is.
      </p>
      {duties.length === 0 ? null : (
        <ul>
          {duties.map(({ asks, source, clause, paragraphs }) => (
            <li key={clause}>
              Asked there: {DUTY_WORDS[asks]} ({source}, {clause}). Paragraphs {paragraphs.join(', ')} carry
              it.
            </li>
          ))}
        </ul>
      )}
      <p>Local rules may ask for more. Ask whoever knows them.</p>
    </div>
  );
}
