import type { FastifyReply, FastifyRequest } from 'fastify';

/** The name of the cookie that carries a new secret from the form to the page that shows it. */
const COOKIE = 'tackleroom_new_calendar';

/** Time enough for a slow line; after that the secret is gone. */
const SECONDS_KEPT = 300;

/**
 * Hands a new secret to the page that shows it next. It travels in the browser that asked for it, because the server
 * keeps no secret, not even for the moment between the two.
 */
export function carrySecret(reply: FastifyReply, secret: string): void {
  reply.setCookie(COOKIE, secret, {
    path: '/calendar',
    httpOnly: true,
    sameSite: 'strict',
    secure: reply.request.protocol === 'https',
    maxAge: SECONDS_KEPT,
  });
}

/** The secret that was handed on, once: it is taken out of the browser again. */
export function takeSecret(request: FastifyRequest, reply: FastifyReply): string | undefined {
  const secret = request.cookies[COOKIE];
  if (secret !== undefined) reply.clearCookie(COOKIE, { path: '/calendar' });
  return secret;
}
