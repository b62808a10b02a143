import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { OnWheelsPlot } from '../../src/jobs/on-wheels-plot.js';
import { toDay } from '../../src/rules/calendar/day.js';
import { programme } from '../../src/rules/programme/programme.js';
import type { Work } from '../../src/rules/programme/pace.js';
import { tallPanels } from '../rules/programme-example.js';

function plotOf(stated: Partial<Work> = {}): string {
  const day = toDay('2026-11-30');
  const crew = { personsAtGround: 2, personsAloft: 2, drivers: 1, unloadPersons: 4 };
  const days = { window: { from: day, to: day }, setUpDays: 0, clearDays: 0, truckTimes: [] };
  const result = programme({ ...tallPanels(stated), ...crew, ...days });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return renderToString(h(OnWheelsPlot, { id: 'wheels', programme: result.figures }));
}

describe('the plot of panels on wheels', () => {
  it('is an image with a name and a description in words', () => {
    const plot = plotOf();
    expect(plot).toMatch(
      /^<svg [^>]*role="img" aria-labelledby="wheels-title" aria-describedby="wheels-desc">/,
    );
    expect(plot).toContain('<title id="wheels-title">Panels on wheels over working time</title>');
    expect(plot).toContain(
      'At most 20 panels stand on trolleys at once. The limit is 20. Trucks: 3. ' +
        'The last panel is hung on 1 December, 12:45. Nights and days off are left out.',
    );
  });

  it('has no style of its own, which the pages forbid', () => {
    expect(plotOf()).not.toMatch(/ style=|<style|<script/);
  });

  it('marks each truck and day, and says where the limit lies', () => {
    const plot = plotOf();
    expect(plot.match(/l4 7h-8z/g)).toHaveLength(3);
    expect(plot.match(/stroke-dasharray="1 4"/g)).toHaveLength(1);
    expect(plot).toContain('limit 20<');
    expect(plotOf({ panelsOnWheels: 90 })).toContain('limit 90, above this plot<');
    expect(plotOf({ panelsOnWheels: 0 })).toContain('No limit is set');
  });

  it('steps up and down between the axis and the limit', () => {
    // The axis lies at 200, the greatest number at 28; one day's panel of one goes up to it and back.
    const line = /class="plot-line"[^>]* d="([^"]*)"/.exec(plotOf({ panels: 1, panelsOnWheels: 0 }))?.[1];
    // A day of 480 minutes is 358 units wide: off at 30/18 minutes, hung 25 minutes later.
    const [off, hung] = [34 + (358 * 30) / 18 / 480, 34 + (358 * (30 / 18 + 25)) / 480];
    expect(line).toBe(`M34 200H${off.toFixed(1)}V28H${hung.toFixed(1)}V200`);
  });

  it('stays small for a work of thousands of panels', () => {
    expect(plotOf({ panels: 10_000, crews: 3, panelsOnWheels: 100 }).length).toBeLessThan(150_000);
  });
});
