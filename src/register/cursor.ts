import { badInput } from '../http/input.js';
import { isPlain } from '../http/plain-text.js';

/** The cursor of the page that comes after the item with this key: opaque to whoever is handed it. */
export function cursorAfter(tagKey: string): string {
  return Buffer.from(tagKey, 'utf8').toString('base64url');
}

/**
 * The key that a cursor stands behind.
 * @throws Problem `bad_input` when it is not a cursor of ours.
 */
export function tagKeyBefore(cursor: string): string {
  const tagKey = Buffer.from(cursor, 'base64url').toString('utf8');
  if (tagKey === '' || cursorAfter(tagKey) !== cursor || !isPlain(tagKey, { lines: false })) {
    throw badInput([{ field: 'after', message: 'send the `next` of the page before, as it came' }]);
  }
  return tagKey;
}
