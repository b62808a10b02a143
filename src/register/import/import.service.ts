import { Injectable } from '@nestjs/common';
import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Catalogue } from '../../catalogue/catalogue.js';
import { Clock } from '../../clock.js';
import { Ledger, type Change } from '../../ledger/ledger.service.js';
import type { Actor } from '../../people/actor.js';
import { Problem } from '../../problem.js';
import { Reads } from '../../storage/reads.js';
import { StoresService } from '../../stores/stores.service.js';
import { examineFile, guessMapping, headingsOf, type Examination, type ImportFacts } from './examine-file.js';
import type { AcceptImportDto, ImportMappingDto } from './import.dto.js';
import { KeptMappings } from './kept-mappings.service.js';
import { mappingFrom } from './mapping-input.js';
import type { ImportMapping } from './mapping.js';
import { mendFile } from './mend-file.js';
import { readTable } from './read-table.js';
import type { Table } from './table.js';
import { takeRows } from './take-rows.js';
import { Uploads, type Upload } from './uploads.service.js';

/** A file with everything found in it. */
export interface DryRun {
  readonly upload: Upload;
  readonly examination: Examination;
  readonly facts: ImportFacts;
}

/** What was taken, and the faulty rows to mend. */
export interface ImportOutcome {
  readonly taken: number;
  readonly unchanged: number;
  readonly faulty: number;
  readonly skipped: number;
  readonly mendFile?: Buffer;
}

type File = Pick<Upload, 'fileName' | 'bytes'>;

/** Brings the gear of a file into the register: a dry run first, then what the storeman chooses. */
@Injectable()
export class ImportService {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
    private readonly stores: StoresService,
    private readonly clock: Clock,
    private readonly uploads: Uploads,
    private readonly mappings: KeptMappings,
  ) {}

  /**
   * Reads a file, keeps it for a day, and says everything found in it. Nothing enters the register.
   * @throws Problem `unreadable_file`, `file_too_large`.
   */
  async dryRun(actor: Actor, file: File): Promise<DryRun> {
    await readTable(file.bytes); // what cannot be read is not kept
    const upload = await this.uploads.keep(actor, file);
    return this.report(actor, upload.id);
  }

  /** Everything found in a file that waits. @throws Problem `not_found`. */
  async report(actor: Actor, uploadId: string): Promise<DryRun> {
    const upload = await this.uploads.get(actor, uploadId);
    const { table, mapping, facts } = await this.read(upload.bytes);
    return { upload, facts, examination: await examineFile(this.reads.manager, { table, mapping, facts }) };
  }

  /** Reads a waiting file as the storeman says, and keeps that for files with the same headings. @throws Problem `not_found`, `bad_input`. */
  async choose(actor: Actor, uploadId: string, input: ImportMappingDto): Promise<DryRun> {
    const upload = await this.uploads.get(actor, uploadId);
    await this.keepMapping(upload.bytes, input);
    return this.report(actor, uploadId);
  }

  /** The faulty rows of a waiting file, as a file to mend. @throws Problem `not_found`. */
  async faultyRows(actor: Actor, uploadId: string): Promise<{ fileName: string; bytes: Buffer }> {
    const { bytes, fileName } = await this.uploads.get(actor, uploadId);
    const { table, mapping, facts } = await this.read(bytes);
    const examination = await examineFile(this.reads.manager, { table, mapping, facts });
    return {
      fileName: `${fileName.replace(/\.[^.]*$/, '')}-to-mend.csv`,
      bytes: mendFile(table, examination),
    };
  }

  /**
   * Takes what the storeman chose from a waiting file: every row or none, or the sound rows.
   * @throws Problem `not_found`, `not_allowed_now`, `tag_taken`.
   */
  async accept(actor: Actor, uploadId: string, mode: AcceptImportDto['mode']): Promise<ImportOutcome> {
    return this.take(actor, await this.uploads.get(actor, uploadId), mode);
  }

  /**
   * Takes a file at once, as the command line does, read by the kept mapping of its headings or by guesses.
   * @throws Problem `unreadable_file`, `file_too_large`, `not_allowed_now`, `tag_taken`.
   */
  async take(actor: Actor, file: File, mode: AcceptImportDto['mode']): Promise<ImportOutcome> {
    const { table, mapping, facts } = await this.read(file.bytes);
    return this.ledger.change(actor, async (change) => {
      const examination = await examineFile(change.manager, { table, mapping, facts });
      refuseWhole(examination, mode);
      const { sound, unchanged, faulty } = examination.rows;
      const counts = {
        taken: sound.length,
        unchanged: unchanged.length,
        faulty: faulty.length,
        skipped: examination.skipped,
      };
      if (sound.length > 0) {
        await takeRows(change, sound, file.fileName);
        noteImport(change, file, counts);
      }
      return { ...counts, ...(faulty.length > 0 ? { mendFile: mendFile(table, examination) } : {}) };
    });
  }

  /** What a file says without a dry run being kept: for the command line. @throws Problem `unreadable_file`. */
  async examine(bytes: Buffer, manager: EntityManager = this.reads.manager): Promise<Examination> {
    return examineFile(manager, await this.read(bytes));
  }

  private async read(bytes: Buffer): Promise<{ table: Table; mapping: ImportMapping; facts: ImportFacts }> {
    const [table, facts] = [await readTable(bytes), await this.facts()];
    const headings = headingsOf(table, facts.kinds);
    return { table, facts, mapping: (await this.mappings.find(headings)) ?? guessMapping(headings, facts) };
  }

  private async keepMapping(bytes: Buffer, input: ImportMappingDto): Promise<void> {
    const [table, facts] = [await readTable(bytes), await this.facts()];
    const headings = headingsOf(table, facts.kinds);
    const known = {
      columns: headings.length,
      kinds: facts.kinds.map(({ kind }) => kind),
      stores: facts.stores.map(({ id }) => id),
    };
    await this.mappings.keep(headings, mappingFrom(input, known));
  }

  private async facts(): Promise<ImportFacts> {
    const stores = (await this.stores.list()).map(({ id, name, scheme, timeZone }) => ({
      id,
      name,
      scheme: this.catalogue.scheme(scheme),
      today: this.clock.today(timeZone),
    }));
    return { kinds: this.catalogue.kinds(), stores, today: this.clock.today('UTC') };
  }
}

function refuseWhole({ missing, rows }: Examination, mode: AcceptImportDto['mode']): void {
  if (missing.length > 0) {
    throw new Problem('not_allowed_now', `No column is said to hold: ${missing.join(', ')}. Say so first.`);
  }
  if (mode === 'soundRows' || rows.faulty.length === 0) return;
  throw new Problem(
    'not_allowed_now',
    `Rows with faults: ${rows.faulty.length}. All or nothing was asked, so nothing was taken.`,
  );
}

function noteImport(change: Change, { fileName, bytes }: File, counts: object): void {
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  change.note({
    action: 'register.imported',
    subjectKind: 'register',
    subjectId: 'import',
    detail: { fileName, sha256, ...counts },
  });
}
