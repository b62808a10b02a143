import { isIPv6 } from 'node:net';
import type { Settings } from '../settings.js';

/** The address that links in mails and calendars lead to, without a slash at its end. Without `PUBLIC_URL` it is where the server listens. */
export function publicAddress({ publicUrl, host, port }: Settings): string {
  return publicUrl ?? `http://${isIPv6(host) ? `[${host}]` : host}:${port}`;
}

/** True of an address that leads nowhere but to the machine on which it is opened. */
export function leadsToItself(address: string): boolean {
  const { hostname } = new URL(address);
  return hostname === 'localhost' || hostname === '[::1]' || hostname.startsWith('127.');
}
