import type { FastifyRequest } from 'fastify';
import { badInput } from '../../http/input.js';
import { Problem } from '../../problem.js';

/**
 * The one file of a multipart request.
 * @throws Problem `bad_input` when there is none, `unreadable_file` of a broken upload; the limits of multipart answer 413 by themselves.
 */
export async function uploadedFile(request: FastifyRequest): Promise<{ fileName: string; bytes: Buffer }> {
  const message = 'choose a CSV or XLSX file';
  if (!request.isMultipart())
    throw badInput([{ field: 'file', message: `${message}, and send it as multipart/form-data` }]);
  const { part, bytes } = await receive(request);
  if (!part || !bytes || bytes.length === 0) throw badInput([{ field: 'file', message }]);
  return { fileName: part.filename.replace(/[\p{Cc}\p{Cs}]/gu, '').slice(-200) || 'file', bytes };
}

/** Limits that are passed carry their status; whatever else the reader of multipart throws is a broken upload. */
async function receive(request: FastifyRequest) {
  try {
    const part = await request.file();
    return { part, bytes: await part?.toBuffer() };
  } catch (error) {
    if (error instanceof Error && 'statusCode' in error) throw error;
    throw new Problem('unreadable_file', 'The upload broke off, or is no multipart form.');
  }
}
