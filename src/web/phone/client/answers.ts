import type { CheckAnswer, CheckPoint } from '../../../rules/checks/checklist.js';
import { NOTHING_ENTERED, type Draft } from './draft.js';
import type { NewPhoto } from './queue.js';

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
