import type { CheckAnswer, FigureUnit } from '../../../rules/checks/checklist.js';
import type { SmallPhoto } from './photos.js';

/** What has been entered to one point so far. */
export interface PointDraft {
  readonly answer?: CheckAnswer['answer'];
  readonly figures: Readonly<Record<string, { readonly value: string; readonly unit: FigureUnit }>>;
  readonly remarks: string;
  readonly photos: readonly SmallPhoto[];
}

/** What has been entered to a checklist so far, by the key of the point. */
export type Draft = Readonly<Record<string, PointDraft>>;

/** A point to which nothing has been entered. */
export const NOTHING_ENTERED: PointDraft = { figures: {}, remarks: '', photos: [] };

/** How many points have Good or Bad. */
export function answeredIn(draft: Draft): number {
  return Object.values(draft).filter(({ answer }) => answer !== undefined).length;
}
