import { describe, expect, it } from 'vitest';
import { fitness } from '../../src/rules/fitness/fitness.js';
import type { Gear } from '../../src/rules/gear/gear.js';
import type { HostingNeed } from '../../src/rules/hosting/hosting-need.js';
import { context, day, gear, line, TODAY, without } from './example-gear.js';
import { handler, hosting, point, truck } from './example-truck.js';

const judge = (item: Partial<Gear>, need: Partial<HostingNeed> = {}) =>
  fitness(gear(item), line({ hosting: hosting(need) }), context());
const refusals = (item: Partial<Gear>, need: Partial<HostingNeed> = {}) => judge(item, need).refusals;

const NO_CHART = { code: 'no_load_chart', source: 'as-2359-1' };
const NO_COVER = { code: 'attachment_not_covered', source: 'worksafe-victoria-forklifts' };

describe('what hangs on a host machine', () => {
  it('asks nothing of a line that hosts nothing, whatever the chart', () => {
    expect(fitness(gear(), line(), context()).fit).toBe(true);
    expect(fitness(gear({ loadChart: truck({ points: [] }) }), line(), context()).refusals).toEqual([]);
  });

  it.each([
    ['2149.9', true],
    ['2150', true],
    ['2150.000001', false],
  ])('is carried up to what the chart leaves: %s kg', (loadKg, isFit) => {
    const verdict = judge({ loadChart: truck() }, { loadKg });
    expect(verdict.fit).toBe(isFit);
    expect(verdict.refusals).toEqual(
      isFit
        ? []
        : [
            {
              code: 'residual_capacity_too_low',
              needed: loadKg,
              has: '2150',
              unit: 'kg',
              source: 'cfr-1910-178',
            },
          ],
    );
    expect(verdict.workings.map(({ title }) => title)).toContain(
      'What the truck still carries below the lifter',
    );
  });

  it('is refused without a chart, and with one that cannot be read', () => {
    expect(refusals({})).toEqual([NO_CHART, NO_COVER]);
    const loadChart = truck({ points: [point('3000', '500', '2500')] });
    expect(refusals({ loadChart })).toEqual([NO_CHART]);
    expect(judge({ loadChart }).workings.some(({ title }) => title.includes('lifter'))).toBe(false);
  });

  it('is refused outside the chart', () => {
    expect(refusals({ loadChart: truck() }, { heightMm: '4501' })).toEqual([
      {
        code: 'outside_load_chart',
        subject: 'heightMm',
        needed: '4501',
        has: '4500',
        unit: 'mm',
        source: 'common-practice',
      },
    ]);
    const need = line({ hosting: without(hosting(), 'reachMm') });
    expect(fitness(gear({ loadChart: handler() }), need, context()).refusals).toEqual([
      { code: 'outside_load_chart', subject: 'reachMm', unit: 'mm', source: 'common-practice' },
    ]);
  });

  it('is refused where neither plate nor letter covers the lifter, besides all else', () => {
    const loadChart = without(truck(), 'attachmentCover');
    expect(refusals({ loadChart })).toEqual([NO_COVER]);
    expect(refusals({ loadChart }, { loadKg: '3000' }).map(({ code }) => code)).toEqual([
      'residual_capacity_too_low',
      'attachment_not_covered',
    ]);
    const nameless = truck({ attachmentCover: { by: 'plate', reference: ' ' } });
    expect(refusals({ loadChart: nameless })).toEqual([NO_CHART, NO_COVER]);
  });

  it('leaves the stamped rating to be compared as ever', () => {
    const markings = [{ measure: 'workingLoadLimit', value: '1', unit: 't' }] as const;
    expect(refusals({ loadChart: truck(), markings }).map(({ code }) => code)).toEqual(['under_rated']);
  });

  it('is not asked with figures that are none', () => {
    expect(() => judge({ loadChart: truck() }, { loadKg: 'heavy' })).toThrow(RangeError);
  });
});

// The example job is from 15 to 17 June 2026, and today is the 10th.
describe('days of hire', () => {
  const hired = (hire: NonNullable<Gear['hire']>, at = {}) =>
    fitness(gear({ hire }), line(), context(at)).refusals;
  const outside = (subject: string, on: string) => ({
    code: 'outside_hire',
    subject,
    on,
    source: 'common-practice',
  });

  it('hold the days of the job, first and last included', () => {
    expect(hired({ from: day('2026-06-15'), to: day('2026-06-17') })).toEqual([]);
    expect(hired({ from: day('2026-06-15') })).toEqual([]);
    expect(hired({ to: day('2026-06-17') })).toEqual([]);
    expect(hired({})).toEqual([]);
  });

  it('refuse a job that begins before them or ends after them', () => {
    expect(hired({ from: day('2026-06-16'), to: day('2026-06-17') })).toEqual([
      outside('hiredFrom', '2026-06-16'),
    ]);
    expect(hired({ from: day('2026-06-15'), to: day('2026-06-16') })).toEqual([
      outside('hiredTo', '2026-06-16'),
    ]);
    expect(hired({ from: day('2026-06-16'), to: day('2026-06-16') })).toEqual([
      outside('hiredFrom', '2026-06-16'),
      outside('hiredTo', '2026-06-16'),
    ]);
  });

  it('refuse what is still out past them, whatever the job said', () => {
    const window = { from: day('2026-06-01'), to: day('2026-06-08') };
    expect(hired({ to: TODAY }, { window })).toEqual([]);
    expect(hired({ to: day('2026-06-09') }, { window })).toEqual([outside('hiredTo', '2026-06-09')]);
  });
});
