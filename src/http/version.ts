import { Problem } from '../problem.js';

/** The ETag of a version: `"v7"`. */
export function versionTag(version: number): string {
  return `"v${version}"`;
}

/**
 * The version that an If-Match header names.
 * @throws Problem `say_which_version` when there is none, `bad_input` when it is not one of ours.
 */
export function versionFrom(ifMatch: string | undefined): number {
  if (!ifMatch) throw new Problem('say_which_version', 'If-Match is missing.');
  const version = /^(?:W\/)?"v(\d{1,9})"$/.exec(ifMatch.trim())?.[1];
  if (!version) throw new Problem('bad_input', 'If-Match should be an ETag such as "v7".');
  return Number(version);
}

/** @throws Problem `changed_meanwhile` unless the row still has the version that was read. */
export function refuseStale(what: string, { read, now }: { read: number; now: number }): void {
  if (read !== now)
    throw new Problem('changed_meanwhile', `${what} is at version ${now} now; you read version ${read}.`);
}
