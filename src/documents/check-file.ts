import { fileTypeFromBuffer } from 'file-type';
import { badInput } from '../http/input.js';
import type { ReceivedFile } from '../http/received-form.js';
import { Problem } from '../problem.js';
import { KEPT_TYPES, type DocumentKind } from './document-kind.js';

/** What programs declare of a file they know nothing of. */
const SAYS_NOTHING = new Set(['', 'application/octet-stream']);

/** What cameras write that most programs cannot show. */
const HEIF_TYPES = /^image\/(heic|heif|avif)/;

const LONGEST_NAME = 200;

/**
 * The true media type of a file, by its content, and the name to keep it under.
 * @throws Problem `bad_input` of no file or an empty one; `wrong_file_type` of a type that is not kept, or of a file
 * whose name or declared type says otherwise than its content.
 */
export async function checkFile(
  file: ReceivedFile | undefined,
  kind: DocumentKind,
): Promise<{ mediaType: string; name: string }> {
  if (!file) throw badInput([{ field: 'file', message: 'choose a file' }]);
  if (file.bytes.length === 0)
    throw badInput([{ field: 'file', message: 'the file is empty: choose it again' }]);
  const mediaType = (await fileTypeFromBuffer(file.bytes))?.mime ?? 'unknown';
  if (HEIF_TYPES.test(mediaType)) {
    throw refusal(
      'This photo is in a format that most programs cannot show. Set the camera to its most compatible format, or send a JPEG.',
    );
  }
  const type = KEPT_TYPES[mediaType];
  if (!type) throw refusal('The file is no JPEG, PNG, WebP or PDF, whatever its name says.');
  if (!type.kinds.includes(kind)) throw refusal(WRONG_KIND[kind]);
  const name = plainName(file.fileName);
  refuseLies({ name, declaredType: file.declaredType, type });
  return { mediaType, name };
}

const WRONG_KIND: Readonly<Record<DocumentKind, string>> = {
  photo: 'A photo is a JPEG, PNG or WebP. A PDF is kept as a certificate.',
  certificate: 'A certificate is a PDF, JPEG or PNG.',
};

/** A file that says one thing and is another was made to deceive, or saved by mistake. */
function refuseLies({
  name,
  declaredType,
  type,
}: {
  name: string;
  declaredType: string;
  type: (typeof KEPT_TYPES)[string];
}): void {
  const what = type?.declaredAs[0] ?? 'file of another sort';
  const extension = /\.([^.]+)$/.exec(name)?.[1]?.toLowerCase();
  if (extension !== undefined && !type?.extensions.includes(extension)) {
    throw refusal(`The name ends in .${extension}, but the file is a ${what}.`);
  }
  refuseOtherType(declaredType, { what, known: type?.declaredAs ?? [] });
}

function refuseOtherType(
  declaredType: string,
  { what, known }: { what: string; known: readonly string[] },
): void {
  const declared = declaredType.toLowerCase().split(';')[0]?.trim() ?? '';
  if (!SAYS_NOTHING.has(declared) && !known.includes(declared)) {
    throw refusal(`The file was sent as ${declared}, but it is a ${what}.`);
  }
}

/** The last part of a path, without signs that cannot be seen. It is shown to people only: no file is ever opened by it. */
function plainName(fileName: string): string {
  const last = fileName.split(/[/\\]/).at(-1) ?? '';
  return (
    last
      .replace(/[\p{Cc}\p{Cf}\p{Cs}]/gu, '')
      .trim()
      .slice(-LONGEST_NAME) || 'file'
  );
}

function refusal(detail: string): Problem {
  return new Problem('wrong_file_type', detail, { errors: [{ field: 'file', message: detail }] });
}
