import { Injectable } from '@nestjs/common';
import { IsNull, type EntityManager } from 'typeorm';
import { badInput, readForm, readInput } from '../http/input.js';
import type { ReceivedForm } from '../http/received-form.js';
import { countingRecords, recordToVouch, type CountingRecord } from '../inspections/records-of-items.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { changeItem, lockItem, requireItem, type LockedItem } from '../register/item-condition.js';
import { Reads } from '../storage/reads.js';
import { KEEPS_CERTIFICATES, mayAddCertificates } from './document-kind.js';
import { checkFile } from './check-file.js';
import { DocumentFiles } from './document-files.js';
import { DocumentEntity } from './document.entity.js';
import { NewDocumentDto, type DocumentView } from './documents.dto.js';

/** More documents than any item gathers in its life. */
const MOST_DOCUMENTS = 500;

/** Photos and certificates of items. */
@Injectable()
export class DocumentsService {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly files: DocumentFiles,
  ) {}

  /**
   * Keeps a file with its item. The same file for the same thing is kept once, and gives the document there is. A
   * certificate of the last examination that the item passed puts its report on file in the same change.
   * @throws Problem `not_found`, `bad_input`, `wrong_file_type`, or `not_your_role` of a certificate.
   */
  async add(actor: Actor, itemId: number, form: ReceivedForm): Promise<DocumentView> {
    const input = await readInput(NewDocumentDto, readForm(form.fields));
    if (input.kind === 'certificate' && !mayAddCertificates(actor)) {
      throw new Problem('not_your_role', `Certificates need the role ${KEEPS_CERTIFICATES.join(' or ')}.`);
    }
    await requireItem(this.reads.manager, itemId);
    const { mediaType, name } = await checkFile(form.file, input.kind);
    if (!form.file) throw badInput([{ field: 'file', message: 'choose a file' }]);
    const { sha256, bytes } = form.file;
    await this.files.keep({ sha256, bytes }); // before its row: a file without a row does no harm
    const id = await this.ledger.change(actor, (change) =>
      insert(change, itemId, { ...input, mediaType, name, sha256, sizeBytes: bytes.length }),
    );
    return this.get(id);
  }

  /** The documents of an item, newest first. @throws Problem `not_found`. */
  async ofItem(itemId: number): Promise<DocumentView[]> {
    await requireItem(this.reads.manager, itemId);
    return views(this.reads.manager, 'itemId', itemId);
  }

  /** The records of an item that a document can belong to, the newest first. */
  async recordsOf(itemId: number): Promise<CountingRecord[]> {
    return (await countingRecords(this.reads.manager, [itemId])).reverse();
  }

  /** One document. @throws Problem `not_found`. */
  async get(id: number): Promise<DocumentView> {
    const [view] = await views(this.reads.manager, 'id', id);
    if (!view) throw new Problem('not_found', `There is no document with the number ${id}.`);
    return view;
  }
}

type NewDocument = NewDocumentDto & Pick<DocumentEntity, 'mediaType' | 'name' | 'sha256' | 'sizeBytes'>;

async function insert(change: Change, itemId: number, document: NewDocument): Promise<number> {
  const { manager, actor, at } = change;
  const item = await lockItem(change, itemId);
  const { inspectionId = null, defectId = null, kind, sha256 } = document;
  await requireOfItem(manager, itemId, { inspectionId, defectId });
  const same = await manager.findOneBy(DocumentEntity, {
    ...{ itemId, kind, sha256 },
    inspectionId: inspectionId ?? IsNull(),
    defectId: defectId ?? IsNull(),
  });
  if (same) return same.id;
  const row = { ...document, itemId, inspectionId, defectId, keptBy: actor.id, keptAt: at };
  const { identifiers } = await manager.insert(DocumentEntity, row);
  const id = Number(identifiers[0]?.['id']);
  change.note({
    action: 'document.added',
    subjectKind: 'item',
    subjectId: itemId,
    detail: { id, ...document },
  });
  if (kind === 'certificate' && inspectionId !== null) await putOnFile(change, item, { id, inspectionId });
  return id;
}

/** In doubt the report stays missing: only the last examination passed counts, or before there is one a proof load test. */
async function putOnFile(
  change: Change,
  item: LockedItem,
  { id, inspectionId }: { id: number; inspectionId: number },
): Promise<void> {
  if (item.certificateOnFile || (await recordToVouch(change.manager, item.id))?.id !== inspectionId) return;
  await changeItem(change, item, { certificateOnFile: true });
  change.note({
    action: 'item.certificateFiled',
    subjectKind: 'item',
    subjectId: item.id,
    detail: { tag: item.tag, documentId: id, inspectionId },
  });
}

/** @throws Problem `bad_input` of a record that is not the item's own. */
async function requireOfItem(
  manager: EntityManager,
  itemId: number,
  { inspectionId, defectId }: { inspectionId: number | null; defectId: number | null },
): Promise<void> {
  const records = [
    { table: 'inspection', field: 'inspectionId', id: inspectionId },
    { table: 'defect', field: 'defectId', id: defectId },
  ];
  for (const { table, field, id } of records) {
    if (id === null) continue;
    const sql = `SELECT id FROM ${table} WHERE id = $1 AND item_id = $2`;
    const rows = await manager.query<object[]>(sql, [id, itemId]);
    if (rows.length === 0) throw badInput([{ field, message: 'name a record of this item' }]);
  }
}

async function views(manager: EntityManager, by: 'id' | 'itemId', value: number): Promise<DocumentView[]> {
  const { entities, raw } = await manager
    .createQueryBuilder(DocumentEntity, 'document')
    .leftJoin('person', 'person', 'person.id = document.keptBy')
    .addSelect('person.name', 'keptByName')
    .where({ [by]: value })
    .orderBy('document.id', 'DESC')
    .limit(MOST_DOCUMENTS)
    .getRawAndEntities<{ keptByName: string | null }>();
  return entities.map(({ item: _, inspection: __, defect: ___, ...row }, place) => ({
    ...row,
    keptBy: raw[place]?.keptByName ?? null,
  }));
}
