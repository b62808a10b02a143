import type { FastifyReply } from 'fastify';

/**
 * Sends the HTML of a mail, for a frame in a page of ours. It may style itself and nothing else: no script, no
 * picture, no form, no frame, no cookie, even when it is opened by itself.
 */
export async function answerMailHtml(reply: FastifyReply, html: string): Promise<void> {
  await reply
    .header('content-security-policy', MAIL_POLICY)
    .header('x-frame-options', 'SAMEORIGIN')
    .header('cache-control', 'no-store')
    .type('text/html; charset=utf-8')
    .send(html);
}

const MAIL_POLICY = [
  "default-src 'none'",
  "style-src 'unsafe-inline'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'self'",
  'sandbox',
].join('; ');
