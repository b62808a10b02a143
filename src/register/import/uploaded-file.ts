import type { FastifyRequest } from 'fastify';
import { badInput } from '../../http/input.js';

/**
 * The one file of a multipart request.
 * @throws Problem `bad_input` when there is none; the limits of multipart answer 413 by themselves.
 */
export async function uploadedFile(request: FastifyRequest): Promise<{ fileName: string; bytes: Buffer }> {
  const message = 'choose a CSV or XLSX file';
  if (!request.isMultipart())
    throw badInput([{ field: 'file', message: `${message}, and send it as multipart/form-data` }]);
  const part = await request.file();
  const bytes = await part?.toBuffer();
  if (!part || !bytes || bytes.length === 0) throw badInput([{ field: 'file', message }]);
  return { fileName: part.filename.replace(/\p{Cc}/gu, '').slice(-200) || 'file', bytes };
}
