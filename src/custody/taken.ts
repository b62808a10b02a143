/** Thrown inside a change when gear that a proposal chose is not to be had any more; the caller proposes anew. */
export class Taken extends Error {
  constructor(readonly tags: readonly string[]) {
    super(`No longer to be had: ${tags.join(', ')}`);
  }
}
