import type { FastifyReply } from 'fastify';

/** The name of the cookie that holds the session token. */
export const SESSION_COOKIE = 'tackleroom_session';

/** Hands the browser its token: not readable by scripts, not sent along from other sites. */
export function setSessionCookie(reply: FastifyReply, token: string): void {
  reply.setCookie(SESSION_COOKIE, token, {
    path: '/',
    httpOnly: true,
    sameSite: 'lax',
    secure: reply.request.protocol === 'https',
  });
}

/** Takes the token away. */
export function clearSessionCookie(reply: FastifyReply): void {
  reply.clearCookie(SESSION_COOKIE, { path: '/' });
}
