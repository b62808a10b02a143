import { SetMetadata } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { createHash } from 'node:crypto';
import { badInput } from './input.js';
import { Problem } from '../problem.js';

/** The one file of a form, as it came: neither its name nor its type is to be believed. */
export interface ReceivedFile {
  readonly fileName: string;
  readonly declaredType: string;
  readonly bytes: Buffer;
  /** SHA-256 of the bytes (FIPS 180-4), in hexadecimal. */
  readonly sha256: string;
}

/** A multipart form with its text fields and its file. */
export interface ReceivedForm {
  readonly fields: Readonly<Record<string, string>>;
  readonly file?: ReceivedFile;
}

/** The metadata that marks a route which takes a file; its value is the most bytes of it. */
export const MOST_FILE_BYTES = 'mostFileBytes';

/** Marks a route that takes a multipart form with a file of at most so many bytes. */
export const TakesFile = (mostBytes: number) => SetMetadata(MOST_FILE_BYTES, mostBytes);

const received = new WeakMap<FastifyRequest['raw'], Promise<ReceivedForm>>();

/**
 * The multipart form of a request. It is read once: whoever asks again gets the same.
 * @throws Problem `bad_input` of another request or a broken one, `document_too_large` of a file over the limit.
 */
export function receivedForm(request: FastifyRequest, mostBytes: number): Promise<ReceivedForm> {
  const earlier = received.get(request.raw);
  if (earlier) return earlier;
  const reading = receive(request, mostBytes);
  received.set(request.raw, reading);
  return reading;
}

/** What a form says, short enough to compare: the file by its hash. */
export function digestOf({ fields, file }: ReceivedForm): object {
  return { fields, ...(file ? { file: [file.fileName, file.declaredType, file.sha256] } : {}) };
}

async function receive(request: FastifyRequest, mostBytes: number): Promise<ReceivedForm> {
  if (!request.isMultipart())
    throw badInput([{ field: 'file', message: 'choose a file, and send it as multipart/form-data' }]);
  const fields = new Map<string, string>();
  let file: ReceivedFile | undefined;
  try {
    for await (const part of request.parts({ limits: { fileSize: mostBytes, files: 1, fields: 20 } })) {
      if (part.type === 'field') fields.set(part.fieldname, String(part.value));
      else {
        const bytes = await part.toBuffer();
        const sha256 = createHash('sha256').update(bytes).digest('hex');
        file = { fileName: part.filename ?? '', declaredType: part.mimetype, bytes, sha256 };
      }
    }
  } catch (error) {
    throw asProblem(error, mostBytes);
  }
  return { fields: Object.fromEntries(fields), ...(file ? { file } : {}) };
}

/** Limits that are passed carry a status; whatever else the reader of multipart throws is a broken upload. */
function asProblem(error: unknown, mostBytes: number): unknown {
  const status: unknown = error instanceof Error ? Reflect.get(error, 'statusCode') : undefined;
  const code: unknown = error instanceof Error ? Reflect.get(error, 'code') : undefined;
  if (code === 'FST_REQ_FILE_TOO_LARGE') {
    const limit = mostBytes / 1_000_000;
    return new Problem('document_too_large', `A file may have ${limit} MB at most.`);
  }
  if (status !== undefined) return error;
  return badInput([{ field: 'file', message: 'the upload broke off, or is no multipart form' }]);
}
