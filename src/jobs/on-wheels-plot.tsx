import type { Programme } from '../rules/programme/programme-figures.js';
import { shortDay } from '../web/sentences/words.js';
import { onWheelsScale, stepPath, type PlotScale } from './on-wheels-scale.js';

/**
 * The panels on wheels over the working time of a job, as a step plot: the limit, the trucks and the days are marked.
 * Told apart by shape, dash and word, never by colour. `id` keeps the names of its parts apart on a page.
 */
export function OnWheelsPlot({ id, programme }: { id: string; programme: Programme }) {
  const scale = onWheelsScale(programme);
  const { width, height } = scale;
  return (
    <svg
      class="plot"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-desc`}
    >
      <title id={`${id}-title`}>Panels on wheels over working time</title>
      <desc id={`${id}-desc`}>{description(programme)}</desc>
      <DayLines scale={scale} />
      <Axes scale={scale} />
      <path class="plot-line" fill="none" d={stepPath(programme.run, scale)} />
      <LimitLine scale={scale} />
      <TruckMarks scale={scale} />
    </svg>
  );
}

function description({ run, pace, trucks, finishes }: Programme): string {
  const limit = pace.limit === Infinity ? 'No limit is set' : `The limit is ${pace.limit}`;
  const last = `${shortDay(finishes.slice(0, 10))}, ${finishes.slice(11)}`;
  return (
    `At most ${run.most.panelsOnWheels} panels stand on trolleys at once. ${limit}. ` +
    `Trucks: ${trucks.length}. The last panel is hung on ${last}. Nights and days off are left out.`
  );
}

function Axes({ scale }: { scale: PlotScale }) {
  const { left, right, top, bottom } = scale;
  return (
    <g class="plot-axes">
      <path fill="none" d={`M${left} ${top}V${bottom}H${right}`} />
      {scale.counts.map((count) => (
        <g key={count}>
          <path fill="none" d={`M${left - 4} ${scale.y(count)}H${left}`} />
          <text x={left - 7} y={scale.y(count) + 4} text-anchor="end">
            {count}
          </text>
        </g>
      ))}
      <text x={left - 28} y={12}>
        panels on wheels
      </text>
      <text x={right} y={scale.height - 6} text-anchor="end">
        working time, by day
      </text>
    </g>
  );
}

function DayLines({ scale }: { scale: PlotScale }) {
  return (
    <g class="plot-days">
      {scale.dayEdges.map((x) => (
        <path key={x} fill="none" stroke-dasharray="1 4" d={`M${x} ${scale.top}V${scale.bottom}`} />
      ))}
      {scale.dayLabels.map(({ day, x }) => (
        <text key={day} x={x} y={scale.bottom + 31} text-anchor="start">
          {shortDay(day)}
        </text>
      ))}
    </g>
  );
}

function LimitLine({ scale }: { scale: PlotScale }) {
  const { limit, left, right, top } = scale;
  if (limit === undefined) return null;
  const shown = limit <= scale.highest;
  return (
    <g class="plot-limit">
      {shown ? <path fill="none" stroke-dasharray="8 4" d={`M${left} ${scale.y(limit)}H${right}`} /> : null}
      <text x={right} y={shown ? scale.y(limit) - 4 : top - 4} text-anchor="end">
        {shown ? `limit ${limit}` : `limit ${limit}, above this plot`}
      </text>
    </g>
  );
}

/** A triangle under the axis where each truck arrives, with its number where there is room. */
function TruckMarks({ scale }: { scale: PlotScale }) {
  const { bottom } = scale;
  return (
    <g class="plot-trucks">
      {scale.trucks.map(({ truck, x, numbered }) => (
        <g key={truck}>
          <path d={`M${x} ${bottom + 2}l4 7h-8z`} />
          {numbered ? (
            <text x={x + 6} y={bottom + 13} text-anchor="start">
              {truck}
            </text>
          ) : null}
        </g>
      ))}
      <text x={scale.left - 28} y={scale.height - 6}>
        ▲ truck arrives
      </text>
    </g>
  );
}
