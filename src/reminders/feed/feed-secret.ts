import { createHash, randomBytes } from 'node:crypto';

const SECRET_BYTES = 32;

/** A new secret that an address cannot be guessed by: 256 random bits, written so that an address can hold them (RFC 4648 section 5). */
export function newSecret(): string {
  return randomBytes(SECRET_BYTES).toString('base64url');
}

/** What of a secret is kept: its SHA-256 (FIPS 180-4), in hexadecimal. */
export function secretHash(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

/** The path that a calendar program reads. */
export function feedPath(secret: string): string {
  return `/calendar/${secret}.ics`;
}

/** The secret in the file name of an address, or undefined of what cannot be one. */
export function secretIn(file: string): string | undefined {
  return /^([A-Za-z0-9_-]{43})\.ics$/.exec(file)?.[1];
}
