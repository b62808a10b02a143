import { mayAddCertificates } from '../documents/document-kind.js';
import type { Actor } from '../people/actor.js';
import { day, INSPECTION_NAMES } from '../web/sentences/words.js';
import type { InspectionView } from './inspections.dto.js';
import { correctionPath } from './item-tables.js';
import { lastToVouch } from './records-of-items.js';

/** Which record lacks its report, and how it comes on file; nothing of an item that passed no examination. */
export function MissingReport({
  me,
  itemId,
  inspections,
}: {
  me: Actor;
  itemId: number;
  /** Newest first. */
  inspections: readonly InspectionView[];
}) {
  const record = lastToVouch(inspections.filter(({ superseded }) => !superseded).reverse());
  if (!record) return null;
  return (
    <p>
      No report is on file of record {record.id}, its last {INSPECTION_NAMES[record.type]},{' '}
      {day(record.doneOn)}. To put it on file, <Certificate me={me} /> or{' '}
      <Number me={me} path={correctionPath(itemId, record)} />.
    </p>
  );
}

function Certificate({ me }: { me: Actor }) {
  return mayAddCertificates(me) ? (
    <a href="#documents">add its certificate</a>
  ) : (
    <>have its certificate added by the store</>
  );
}

function Number({ me, path }: { me: Actor; path: string }) {
  return me.roles.includes('competentPerson') ? (
    <a href={path}>correct the record with the number of the report</a>
  ) : (
    <>have a competent person correct the record with the number of the report</>
  );
}
