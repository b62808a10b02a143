import type { FastifyReply } from 'fastify';

/** Sends a file to be saved. The name is written as RFC 6266 and RFC 8187 ask, so that every letter arrives. */
export async function sendFile(
  reply: FastifyReply,
  { fileName, bytes, type }: { fileName: string; bytes: Buffer; type: string },
): Promise<void> {
  const plain = fileName.replace(/[^\w.-]+/g, '_');
  const encoded = encodeURIComponent(fileName).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16)}`,
  );
  await reply
    .type(type)
    .header('content-disposition', `attachment; filename="${plain}"; filename*=UTF-8''${encoded}`)
    .header('cache-control', 'no-store')
    .send(bytes);
}
