import type { WeekLoad } from '../../rules/reminders/weekly-load.js';
import { Scroll } from '../../web/components/scroll.js';
import { day } from '../../web/sentences/words.js';
import { HALF, loadBars, type LoadBar } from './load-bars.js';

/**
 * How many items are overdue, and how many fall due in each week of the half year ahead. Told apart by hatching,
 * outline and word, never by colour, so that it can be printed in black; the same figures stand in a table under it.
 */
export function LoadAhead({ overdue, weeks }: { overdue: number; weeks: readonly WeekLoad[] }) {
  const [first, second] = loadBars(overdue, weeks);
  return (
    <section aria-labelledby="load-ahead">
      <h2 id="load-ahead">The half year ahead</h2>
      <p>
        The first bar is what is overdue now. The others are what falls due in each week; under each the date
        of its Monday.
      </p>
      <div class="load">
        <LoadPlot id="load-1" bars={first} title="Overdue now, and due in the next 13 weeks" />
        <LoadPlot id="load-2" bars={second} title="Due in the 13 weeks after those" />
      </div>
      <details>
        <summary>The figures as a table</summary>
        <LoadTable overdue={overdue} weeks={weeks} />
      </details>
    </section>
  );
}

function LoadPlot({ id, bars, title }: { id: string; bars: readonly LoadBar[]; title: string }) {
  const { width, height, left, bottom } = HALF;
  return (
    <svg
      class="plot load-plot"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-desc`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>{description(bars)}</desc>
      <pattern id={`${id}-hatch`} width="6" height="6" patternUnits="userSpaceOnUse">
        <path class="hatch" d="M0 6L6 0M-1.5 1.5L1.5 -1.5M4.5 7.5L7.5 4.5" />
      </pattern>
      {bars.map((bar) => (
        <Bar key={bar.key} bar={bar} hatch={`url(#${id}-hatch)`} />
      ))}
      <path class="base" fill="none" d={`M${left} ${bottom}H${width - left}`} />
    </svg>
  );
}

function description(bars: readonly LoadBar[]): string {
  const parts = bars
    .filter((bar) => bar.count > 0)
    .map((bar) => `${bar.overdue ? 'overdue now' : `week of ${day(bar.key)}`} ${bar.count}`);
  return parts.length === 0 ? 'Nothing falls due.' : `Items due: ${parts.join(', ')}.`;
}

function Bar({ bar, hatch }: { bar: LoadBar; hatch: string }) {
  const { x, y, width, height, overdue, cut } = bar;
  const middle = x + width / 2;
  return (
    <g>
      {bar.count === 0 ? null : (
        <rect
          class={overdue ? 'bar-overdue' : 'bar-week'}
          fill={overdue ? undefined : hatch}
          {...{ x, y, width, height }}
        />
      )}
      {cut ? <path class="bar-cut" fill="none" d={cutLine(bar)} /> : null}
      <text class={bar.count === 0 ? 'nought' : undefined} x={middle} y={y - 5} text-anchor="middle">
        {bar.count}
      </text>
      <text class="date" x={middle} y={HALF.bottom + 14} text-anchor="middle">
        {bar.date}
      </text>
      <text class="month" x={overdue ? HALF.left : x} y={HALF.bottom + (overdue ? 14 : 32)}>
        {overdue ? 'late' : bar.month}
      </text>
    </g>
  );
}

/** A zigzag across a bar that is longer than there is room for. */
function cutLine({ x, y, width }: LoadBar): string {
  const steps = Array.from({ length: 6 }, (_, step) => `l${(width + 4) / 6} ${step % 2 === 0 ? -5 : 5}`);
  return `M${x - 2} ${y + 18}${steps.join('')}`;
}

function LoadTable({ overdue, weeks }: { overdue: number; weeks: readonly WeekLoad[] }) {
  return (
    <Scroll label="Items that fall due by week">
      <table class="load-table">
        <caption>Items that fall due by week</caption>
        <thead>
          <tr>
            <th scope="col">Week of</th>
            <th scope="col" class="num">
              Items
            </th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">overdue now</th>
            <td class="num">{overdue}</td>
          </tr>
          {weeks.map(({ monday, count: items }) => (
            <tr key={monday}>
              <th scope="row">{day(monday)}</th>
              <td class="num">{items}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
