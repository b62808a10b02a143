import type { PhoneItem } from './contract.js';

/**
 * The item of a job that a tag or a serial number means. Gloves leave out dashes and spaces: they do not count where
 * that still means one item only.
 */
export function findItem(items: readonly PhoneItem[], text: string): PhoneItem | undefined {
  const exact = items.filter(({ tag, serial }) => [tag.toUpperCase(), serial?.toUpperCase()].includes(text));
  if (exact.length > 0) return exact.length === 1 ? exact[0] : undefined;
  const bare = bareOf(text);
  const alike = items.filter(({ tag }) => bare !== '' && bareOf(tag) === bare);
  return alike.length === 1 ? alike[0] : undefined;
}

function bareOf(text: string): string {
  return text.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');
}
