import type { CheckAnswer, CheckPoint, FigureUnit } from '../../../rules/checks/checklist.js';
import type { SmallPhoto } from './photos.js';
import type { NewPhoto } from './queue.js';

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

/** The answers of a draft in the order of the checklist; points without Good or Bad are left out. */
export function answersOf(points: readonly CheckPoint[], draft: Draft): readonly CheckAnswer[] {
  return points.flatMap(({ key }) => {
    const { answer, figures, remarks } = draft[key] ?? NOTHING_ENTERED;
    if (!answer) return [];
    const entered = Object.entries(figures).filter(([, { value }]) => value.trim() !== '');
    const isBad = answer === 'bad' && remarks.trim() !== '';
    return [
      {
        point: key,
        answer,
        ...(entered.length > 0 ? { figures: Object.fromEntries(entered) } : {}),
        ...(isBad ? { remarks: remarks.trim() } : {}),
      },
    ];
  });
}

/** The photos of the points that are bad. */
export function photosOf(points: readonly CheckPoint[], draft: Draft): readonly NewPhoto[] {
  return points.flatMap(({ key }) =>
    draft[key]?.answer === 'bad' ? draft[key].photos.map((photo) => ({ ...photo, point: key })) : [],
  );
}
