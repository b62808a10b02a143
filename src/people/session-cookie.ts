import type { FastifyReply } from 'fastify';
import { LONGEST_SESSION_MS } from './sessions.service.js';

/** The name of the cookie that holds the session token. */
export const SESSION_COOKIE = 'tackleroom_session';

/**
 * Hands the browser its token: not readable by scripts, not sent along from other sites. It lives as long as a session
 * can, for a phone ends its browser in the background, and what waits on it must go out all the same. The server ends
 * the session long before that where nobody uses it.
 */
export function setSessionCookie(reply: FastifyReply, token: string): void {
  reply.setCookie(SESSION_COOKIE, token, {
    path: '/',
    httpOnly: true,
    sameSite: 'lax',
    maxAge: LONGEST_SESSION_MS / 1000,
    secure: reply.request.protocol === 'https',
  });
}

/** Takes the token away. */
export function clearSessionCookie(reply: FastifyReply): void {
  reply.clearCookie(SESSION_COOKIE, { path: '/' });
}
