import { isIPv6 } from 'node:net';
import type { Settings } from '../settings.js';

/** The address that links in mails and calendars lead to, without a slash at its end. Without `PUBLIC_URL` it is where the server listens. */
export function publicAddress({ publicUrl, host, port }: Settings): string {
  return publicUrl ?? `http://${isIPv6(host) ? `[${host}]` : host}:${port}`;
}
