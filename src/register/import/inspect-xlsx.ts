import { dirname, join } from 'node:path/posix';
import yauzl, { type Entry, type ZipFile } from 'yauzl';
import { Problem } from '../../problem.js';

/** More than any register needs. The bytes are counted while they inflate, whatever the file claims. */
const MOST_ENTRIES = 500;
const MOST_INFLATED_BYTES = 64 * 1024 * 1024;

const WORKBOOK = 'xl/workbook.xml';
const WORKBOOK_PARTS = 'xl/_rels/workbook.xml.rels';

/** What must be known of a sheet before it is read. */
export interface SheetInspection {
  /** The cells of the first sheet that hold a formula, such as `B7`. */
  readonly formulas: ReadonlySet<string>;
  readonly sheetNames: readonly string[];
}

/**
 * Looks into an XLSX file (ECMA-376) without trusting it: refuses what would inflate beyond bounds, and finds the
 * formulas of its first sheet, of which a reader only shows the last result.
 * @throws Problem `unreadable_file`, `file_too_large`.
 */
export async function inspectXlsx(bytes: Buffer): Promise<SheetInspection> {
  const parts = await inflate(bytes);
  const workbook = parts.get(WORKBOOK);
  if (workbook === undefined)
    throw new Problem('unreadable_file', 'The file is packed like a sheet, but holds no XLSX workbook.');
  const sheets = [...workbook.matchAll(/<(?:\w+:)?sheet\s[^<>]*>/g)].map(([tag]) => tag);
  const partId = attribute(sheets[0] ?? '', '\\w+:id');
  const part = [...(parts.get(WORKBOOK_PARTS) ?? '').matchAll(/<(?:\w+:)?Relationship\s[^<>]*>/g)]
    .map(([tag]) => tag)
    .find((tag) => attribute(tag, 'Id') === partId);
  const sheet = parts.get(partPath(attribute(part ?? '', 'Target')));
  if (sheet === undefined) throw new Problem('unreadable_file', 'The workbook has no first sheet.');
  return { formulas: formulaCells(sheet), sheetNames: sheets.map((tag) => attribute(tag, 'name')) };
}

async function inflate(bytes: Buffer): Promise<Map<string, string>> {
  const zip = await yauzl
    .fromBufferPromise(bytes, { lazyEntries: true, strictFileNames: true })
    .catch(refuse);
  if (zip.entryCount > MOST_ENTRIES) throw tooLarge();
  const parts = new Map<string, string>();
  let left = MOST_INFLATED_BYTES;
  try {
    for await (const entry of zip.eachEntry()) {
      const content = await inflateEntry(zip, entry, left);
      left -= content.length;
      if (/^xl\/(?:[^/]+|_rels\/[^/]+|worksheets\/[^/]+)$/.test(entry.fileName)) {
        parts.set(entry.fileName, content.toString('utf8'));
      }
    }
  } catch (error) {
    refuse(error);
  } finally {
    zip.close();
  }
  return parts;
}

async function inflateEntry(zip: ZipFile, entry: Entry, most: number): Promise<Buffer> {
  if (entry.isEncrypted())
    throw new Problem('unreadable_file', 'The workbook is locked with a password. Save it without one.');
  if (entry.uncompressedSize > most) throw tooLarge();
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of await zip.openReadStreamPromise(entry)) {
    if (!Buffer.isBuffer(chunk)) continue;
    size += chunk.length;
    if (size > most) throw tooLarge();
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

function refuse(error: unknown): never {
  if (error instanceof Problem) throw error;
  throw new Problem('unreadable_file', 'The workbook is damaged: it cannot be unpacked.');
}

function tooLarge(): Problem {
  return new Problem('file_too_large', 'Unpacked, the workbook is larger than any register.');
}

function attribute(tag: string, name: string): string {
  return new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(tag)?.[1] ?? '';
}

/** Targets are relative to the workbook, or absolute in the package. */
function partPath(target: string): string {
  return target.startsWith('/') ? target.slice(1) : join(dirname(WORKBOOK), target);
}

function formulaCells(sheet: string): Set<string> {
  const cells = sheet.matchAll(/<(?:\w+:)?c(\s[^<>]*)>\s*<(?:\w+:)?f[\s/>]/g);
  return new Set([...cells].map(([, attributes]) => attribute(attributes ?? '', 'r')));
}
