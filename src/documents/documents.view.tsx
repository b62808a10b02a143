import type { CountingRecord } from '../inspections/records-of-items.js';
import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { Choice, Form } from '../web/components/form.js';
import { day, INSPECTION_NAMES } from '../web/sentences/words.js';
import { KEPT_TYPES, LARGEST_DOCUMENT_BYTES, mayAddCertificates } from './document-kind.js';
import type { DocumentView } from './documents.dto.js';

/** A record of the item that a certificate or a photo can belong to. */
export type ExaminationChoice = Pick<CountingRecord, 'id' | 'type' | 'reportNumber'> & {
  readonly doneOn: string;
};

interface SectionProps {
  readonly me: Actor;
  readonly itemId: number;
  /** The inspections of the item that count. */
  readonly records: readonly ExaminationChoice[];
  readonly documents: readonly DocumentView[];
}

/** The photos and certificates of an item, and the form to add one. */
export function DocumentSection({ me, itemId, records, documents }: SectionProps) {
  return (
    <section id="documents">
      <h2>Photos and certificates</h2>
      {documents.length === 0 ? <p>None is kept.</p> : null}
      <DocumentList documents={documents} />
      <details>
        <summary>Add a photo or a certificate</summary>
        <DocumentForm me={me} itemId={itemId} records={records} />
      </details>
    </section>
  );
}

/** Each document with what it is, and a photo as a small picture. */
export function DocumentList({ documents }: Pick<SectionProps, 'documents'>) {
  if (documents.length === 0) return null;
  return (
    <ul class="documents">
      {documents.map((document) => (
        <li key={document.id}>
          <a href={`/documents/${document.id}`}>
            {document.mediaType.startsWith('image/') ? (
              <img
                src={`/documents/${document.id}`}
                alt={`${KIND_NAMES[document.kind]} ${document.name}`}
                loading="lazy"
                width={160}
                height={120}
              />
            ) : (
              <span class="document-name">{document.name}</span>
            )}
          </a>
          <p>
            {KIND_NAMES[document.kind]}
            {belonging(document)}, {day(document.keptAt.slice(0, 10))}
            {document.keptBy === null ? '' : `, by ${document.keptBy}`}, {sizeText(document.sizeBytes)}
          </p>
        </li>
      ))}
    </ul>
  );
}

/** The form that takes a file. Certificates are offered to those who may add them. */
export function DocumentForm({
  me,
  itemId,
  records,
  problem,
}: Pick<SectionProps, 'me' | 'itemId' | 'records'> & { readonly problem?: Problem | undefined }) {
  const kinds = mayAddCertificates(me) ? (['photo', 'certificate'] as const) : (['photo'] as const);
  return (
    <Form action={`/register/${itemId}/documents`} multipart label="Add a photo or a certificate">
      <Choice
        label="What it is"
        name="kind"
        options={kinds.map((value) => ({ value, label: KIND_NAMES[value] }))}
        problem={problem}
      />
      <BelongsTo records={records} mayAddCertificates={kinds.length > 1} problem={problem} />
      <div class="field">
        <label for="file">File</label>
        <p class="hint" id="file-hint">
          {kinds.length === 1
            ? 'JPEG, PNG or WebP'
            : 'Photos as JPEG, PNG or WebP; certificates as PDF, JPEG or PNG'}
          , at most {LARGEST_DOCUMENT_BYTES / 1_000_000} MB. Nothing that was added is ever deleted.
        </p>
        <input
          id="file"
          name="file"
          type="file"
          required
          accept={Object.keys(KEPT_TYPES).join(',')}
          aria-describedby="file-hint"
        />
      </div>
      <button type="submit">Add it</button>
    </Form>
  );
}

const ON_FILE =
  'The certificate of the last thorough examination that the item passed puts its report on file; before there is ' +
  'one, that of its last proof load test. No other document does.';

/** Which examination the document belongs to, where the item has any. */
function BelongsTo({
  records,
  mayAddCertificates: certificates,
  problem,
}: Pick<SectionProps, 'records'> & {
  readonly mayAddCertificates: boolean;
  readonly problem: Problem | undefined;
}) {
  const examinations = records.filter(({ type }) => type !== 'preUseCheck');
  if (examinations.length === 0) return null;
  return (
    <Choice
      label="Belongs to"
      name="inspectionId"
      blank="no particular examination"
      {...(certificates && { hint: ON_FILE })}
      options={examinations.map((record) => ({ value: String(record.id), label: recordLabel(record) }))}
      problem={problem}
    />
  );
}

function recordLabel({ type, doneOn, reportNumber }: ExaminationChoice): string {
  const report = reportNumber === null ? 'no report number' : `report ${reportNumber}`;
  return `${INSPECTION_NAMES[type]}, ${day(doneOn)}, ${report}`;
}

const KIND_NAMES: Readonly<Record<DocumentView['kind'], string>> = {
  photo: 'Photo',
  certificate: 'Certificate',
};

function belonging({ inspectionId, defectId }: DocumentView): string {
  if (inspectionId !== null) return ` to record ${inspectionId}`;
  return defectId === null ? '' : ` of defect ${defectId}`;
}

/** A size as people say it. */
function sizeText(bytes: number): string {
  if (bytes < 1_000_000) return `${Math.max(1, Math.round(bytes / 1_000))} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}
