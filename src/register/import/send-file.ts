import type { FastifyReply } from 'fastify';
import { contentDisposition } from '../../http/content-disposition.js';

/** Sends a file to be saved. */
export async function sendFile(
  reply: FastifyReply,
  { fileName, bytes, type }: { fileName: string; bytes: Buffer; type: string },
): Promise<void> {
  await reply
    .type(type)
    .header('content-disposition', contentDisposition('attachment', fileName))
    .header('cache-control', 'no-store')
    .send(bytes);
}
