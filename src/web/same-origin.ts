import type { FastifyRequest } from 'fastify';
import { Problem } from '../problem.js';

const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Refuses a change that another site's page sends with our cookie. Browsers say where a request comes from in
 * Sec-Fetch-Site, older ones in Origin; a program that sends neither brings no cookie of a victim along.
 * @throws Problem `foreign_origin`.
 */
export function refuseForeignOrigin(request: FastifyRequest): void {
  if (SAFE_METHODS.has(request.method)) return;
  const site = request.headers['sec-fetch-site'];
  if (site === 'same-origin' || site === 'none') return;
  const { origin } = request.headers;
  if (
    site === undefined &&
    (origin === undefined || origin === `${request.protocol}://${request.headers.host}`)
  )
    return;
  throw new Problem('foreign_origin', 'Changes are taken from pages of Tackleroom itself only.');
}
