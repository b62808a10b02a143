import type { Citation } from '../citation.js';

/** What someone may enter a figure in: lengths in either system, angles in degrees, counts bare. */
export const FIGURE_UNITS = ['mm', 'in', '°', ''] as const;
export type FigureUnit = (typeof FIGURE_UNITS)[number];

/** A figure that a point of a checklist asks for. */
export interface CheckFigure {
  readonly name: string;
  readonly label: string;
  readonly measures: 'length' | 'angle' | 'count';
  /** The most that can be meant, as decimal text in mm, degrees or a count; beyond it the entry is a slip of the pen. */
  readonly most?: string;
}

/** When a measured figure fails, and who says so. A figure at its limit passes where `atLimit` says so. */
interface CriterionBase {
  /** Name of the figure that is judged. */
  readonly part: string;
  /** Exact decimal text. */
  readonly limit: string;
  readonly atLimit: 'passes' | 'fails';
  readonly source: Citation;
}

/** The share of `part` in `whole`, or its growth or loss from `whole` as a share of `whole`, beyond a limit. */
export interface ShareCriterion extends CriterionBase {
  readonly rule: 'shareAbove' | 'growthAbove' | 'lossAbove';
  /** Name of the figure that it is held against. */
  readonly whole: string;
}

/** A figure beyond a limit of its own, in mm, degrees or a count. */
export interface LimitCriterion extends CriterionBase {
  readonly rule: 'above';
  readonly whole?: undefined;
}

export type Criterion = ShareCriterion | LimitCriterion;

/** One point of a checklist: what to look at, what may be measured, when it fails. */
export interface CheckPoint {
  readonly key: string;
  /** What to look at, as an instruction of a few words. */
  readonly look: string;
  /** What makes it fail, for the eye. */
  readonly failsWhen: string;
  /** How bad a failure is until someone competent says otherwise. */
  readonly severity: 'immediateDanger' | 'observation';
  readonly figures: readonly CheckFigure[];
  readonly criteria: readonly Criterion[];
  readonly source: Citation;
}

/** What was answered to one point. Figures are decimal text as entered, by name. */
export interface CheckAnswer {
  readonly point: string;
  readonly answer: 'good' | 'bad';
  readonly figures?: Readonly<Record<string, { readonly value: string; readonly unit: FigureUnit }>>;
  readonly remarks?: string;
}
