import { lookAlikeKey } from '../../../rules/text/look-alike.js';
import type { PhoneItem } from './contract.js';

/** What a tag or a serial number means on a job: one item for certain, or else those that a person chooses from. */
export type Meant =
  { readonly certain: PhoneItem } | { readonly certain?: undefined; readonly alike: readonly PhoneItem[] };

/**
 * Finds what a tag or a serial number means. What a code says is exact. What was typed is certain only where no other
 * tag of the job reads like it, O like 0 and I like 1: gloves leave out dashes and spaces, and worn labels mislead.
 */
export function meantBy(
  items: readonly PhoneItem[],
  { text, isScanned }: { text: string; isScanned: boolean },
): Meant {
  const wanted = text.toUpperCase();
  const exact = items.filter(({ tag, serial }) =>
    [tag.toUpperCase(), serial?.toUpperCase()].includes(wanted),
  );
  const key = lookAlikeKey(wanted);
  const alike = items.filter(({ tag }) => key !== '' && lookAlikeKey(tag) === key);
  const meant = isScanned && exact.length > 0 ? exact : [...new Set([...exact, ...alike])];
  const [only, ...others] = meant;
  const isCertain =
    only && others.length === 0 && (exact.includes(only) || bareOf(only.tag) === bareOf(wanted));
  return isCertain ? { certain: only } : { alike: meant };
}

function bareOf(text: string): string {
  return text.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');
}
