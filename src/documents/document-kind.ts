import type { Actor } from '../people/actor.js';
import type { Role } from '../people/role.js';

/** What a document is. */
export const DOCUMENT_KINDS = ['photo', 'certificate'] as const;
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];

/** The largest file that is kept, in bytes. */
export const LARGEST_DOCUMENT_BYTES = 10_000_000;

interface KeptType {
  readonly extensions: readonly string[];
  /** What programs declare it as; the first is the registered media type. */
  readonly declaredAs: readonly [string, ...string[]];
  readonly kinds: readonly DocumentKind[];
}

/** The types of file that are kept, by their media types as IANA registers them. */
export const KEPT_TYPES: Readonly<Record<string, KeptType>> = {
  'image/jpeg': {
    extensions: ['jpg', 'jpeg', 'jpe', 'jfif'],
    declaredAs: ['image/jpeg', 'image/jpg', 'image/pjpeg'],
    kinds: ['photo', 'certificate'],
  },
  'image/png': {
    extensions: ['png'],
    declaredAs: ['image/png', 'image/x-png'],
    kinds: ['photo', 'certificate'],
  },
  'image/webp': { extensions: ['webp'], declaredAs: ['image/webp'], kinds: ['photo'] },
  'application/pdf': {
    extensions: ['pdf'],
    declaredAs: ['application/pdf', 'application/x-pdf'],
    kinds: ['certificate'],
  },
};

/** Who may add certificates; photos everyone may. */
export const KEEPS_CERTIFICATES: readonly Role[] = ['storeman', 'competentPerson', 'manager'];

/** Whether someone may add certificates. */
export function mayAddCertificates({ roles }: Pick<Actor, 'roles'>): boolean {
  return KEEPS_CERTIFICATES.some((role) => roles.includes(role));
}
