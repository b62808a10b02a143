import type { Day } from '../rules/calendar/day.js';
import type { Programme } from '../rules/programme/programme-figures.js';

/** Where everything of the plot goes, in units of its view box. */
export interface PlotScale {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** The height of a number of panels. */
  readonly y: (panels: number) => number;
  /** The place of a point of working time. */
  readonly x: (ticks: number) => number;
  /** The greatest number of panels that the plot shows. */
  readonly highest: number;
  /** None: no limit. */
  readonly limit: number | undefined;
  readonly counts: readonly number[];
  readonly dayEdges: readonly number[];
  readonly dayLabels: readonly { readonly day: Day; readonly x: number }[];
  readonly trucks: readonly { readonly truck: number; readonly x: number; readonly numbered: boolean }[];
}

const SIZE = { width: 400, height: 260, left: 34, right: 392, top: 28, bottom: 200 };
const LEAST_LABEL_WIDTH = 84;
const LEAST_NUMBER_WIDTH = 20;
const MOST_DAY_EDGES = 80;

/** The scale of a programme's plot: from the day of the first truck through the end of the last day. */
export function onWheelsScale({ run, pace, days }: Programme): PlotScale {
  const { left, right, top, bottom } = SIZE;
  const firstDay = Math.floor((run.trucks[0]?.arrivesAt ?? 0) / pace.dayTicks);
  const from = firstDay * pace.dayTicks;
  const span = days.length * pace.dayTicks - from;
  const most = run.most.panelsOnWheels;
  const limit = pace.limit === Infinity ? undefined : pace.limit;
  const highest = limit !== undefined && limit <= most * 2 ? Math.max(limit, most) : most;
  const x = (ticks: number): number => tenths(left + ((ticks - from) / span) * (right - left));
  const shown = days.slice(firstDay).map((day, index) => ({ day, x: x((firstDay + index) * pace.dayTicks) }));
  return {
    ...SIZE,
    x,
    y: (panels) => tenths(bottom - (panels / highest) * (bottom - top)),
    highest,
    limit,
    counts: countsTo(highest),
    dayEdges: shown.length > MOST_DAY_EDGES ? [] : shown.slice(1).map((day) => day.x),
    dayLabels: spaced(shown, LEAST_LABEL_WIDTH).filter((day) => day.x + LEAST_LABEL_WIDTH <= right + 16),
    trucks: truckMarks(run.trucks.map(({ truck, arrivesAt }) => ({ truck, x: x(arrivesAt) }))),
  };
}

/** The line of the steps. Steps that fall on the same tenth of a unit are drawn as one, up to the highest and on to the last. */
export function stepPath({ steps, trucks }: Programme['run'], { x, y }: PlotScale): string {
  const columns = new Map<number, { most: number; last: number }>();
  for (const { at, panelsOnWheels } of steps) {
    const across = x(at);
    const most = Math.max(columns.get(across)?.most ?? 0, panelsOnWheels);
    columns.set(across, { most, last: panelsOnWheels });
  }
  const lines = [...columns].map(([across, { most, last }]) =>
    most === last ? `H${across}V${y(last)}` : `H${across}V${y(most)}V${y(last)}`,
  );
  return [`M${x(trucks[0]?.arrivesAt ?? 0)} ${y(0)}`, ...lines].join('');
}

/** Some four round numbers from nought. */
function countsTo(highest: number): number[] {
  const rough = highest / 4;
  const power = 10 ** Math.floor(Math.log10(Math.max(1, rough)));
  const step = power * ([1, 2, 5, 10].find((round) => round * power >= rough) ?? 10);
  return Array.from({ length: Math.floor(highest / step) + 1 }, (_, index) => index * step);
}

/** Leaves out what would stand closer than `least` to the one before it. */
function spaced<Mark extends { x: number }>(marks: readonly Mark[], least: number): Mark[] {
  const kept: Mark[] = [];
  for (const mark of marks) if (mark.x >= (kept.at(-1)?.x ?? -Infinity) + least) kept.push(mark);
  return kept;
}

/** A number stands to the right of its mark, where the next mark leaves room for it. */
function truckMarks(trucks: readonly { truck: number; x: number }[]): PlotScale['trucks'] {
  return trucks.map((mark, index) => {
    const next = trucks[index + 1]?.x ?? Infinity;
    return { ...mark, numbered: next >= mark.x + LEAST_NUMBER_WIDTH };
  });
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
