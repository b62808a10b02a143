import canonicalize from 'canonicalize';

/**
 * The one spelling of a JSON value that everyone agrees on (RFC 8785), so that its hash can be repeated anywhere.
 * @throws TypeError for what JSON cannot say.
 */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('The value cannot be written as JSON.');
  return text;
}
