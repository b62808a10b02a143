/** What was saved last, to be said once on the list that follows. */
export interface SavedNote {
  readonly words: string;
  /** The kind of what was checked: more of it comes first. */
  readonly kind: string;
  readonly outcome: 'fit' | 'unfit';
}

let note: SavedNote | undefined;

/** Leaves the note for the next view. */
export function leaveSavedNote(saved: SavedNote): void {
  note = saved;
}

/** Takes the note, where there is one. */
export function takeSavedNote(): SavedNote | undefined {
  const taken = note;
  note = undefined;
  return taken;
}
