import type { Actor } from '../people/actor.js';
import type { Problem } from '../problem.js';
import { ProblemNote } from '../web/components/problem-note.js';
import { page } from '../web/page.js';
import type { DocumentView } from './documents.dto.js';
import { DocumentForm, DocumentList, type ExaminationChoice } from './documents.view.js';

interface DocumentsPage {
  readonly me: Actor;
  readonly item: { readonly id: number; readonly tag: string };
  readonly documents: readonly DocumentView[];
  readonly records: readonly ExaminationChoice[];
  readonly problem?: Problem;
}

/** The photos and certificates of one item, on a page of their own. */
export function documentsPage({ me, item, documents, records, problem }: DocumentsPage): string {
  return page(
    { title: `Photos and certificates of ${item.tag}`, actor: me, path: `/register/${item.id}/documents` },
    <>
      <p class="crumbs">
        <a href="/register">Register</a> › <a href={`/register/${item.id}`}>{item.tag}</a>
      </p>
      <h1>Photos and certificates of {item.tag}</h1>
      <ProblemNote problem={problem} />
      <section class="sheet narrow">
        <DocumentForm me={me} itemId={item.id} records={records} problem={problem} />
      </section>
      <DocumentList documents={documents} />
    </>,
  );
}
