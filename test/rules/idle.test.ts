import { describe, expect, it } from 'vitest';
import { currency, dueDates } from '../../src/rules/due/due-date.js';
import { idleInspection } from '../../src/rules/due/idle.js';
import type { Trigger } from '../../src/rules/due/scheme.js';
import { fitness } from '../../src/rules/fitness/fitness.js';
import type { Gear } from '../../src/rules/gear/gear.js';
import { context, day, examined, gear, line, requirement, scheme, TODAY } from './example-gear.js';

// ASME B30.20-2006 section 20-1.3.5, as reproduced: a lifter that lay idle for a month or more is inspected before use.
const MONTH: Trigger = { when: 'afterIdle', months: 1 };

/** An item last out and last inspected on these days. */
function lying(lastAwayOn: string | undefined, ...inspections: Gear['inspections']): Gear {
  return gear({ inspections, ...(lastAwayOn === undefined ? {} : { lastAwayOn: day(lastAwayOn) }) });
}

describe('gear that lies idle', () => {
  const idle = (item: Gear, triggers: readonly Trigger[] = [MONTH]) =>
    idleInspection(item, triggers, { lastDoneOn: item.inspections[0]?.doneOn, today: TODAY });

  it.each([
    ['2026-05-11', undefined],
    ['2026-05-10', '2026-05-10'],
    ['2025-01-31', '2025-01-31'],
    ['2026-06-10', undefined],
  ])('last out on %s has lain idle since %s', (lastAwayOn, since) => {
    expect(idle(lying(lastAwayOn))).toEqual(since === undefined ? undefined : { since, months: 1 });
  });

  it('is not idle in a month that it was inspected in, and no longer than since then', () => {
    expect(idle(lying('2026-03-01', examined('2026-05-20')))).toBeUndefined();
    expect(idle(lying('2026-03-01', examined('2026-04-20')))).toEqual({ since: '2026-04-20', months: 1 });
    expect(idle(lying('2026-05-01', examined('2026-04-20')))).toEqual({ since: '2026-05-01', months: 1 });
    expect(idle(lying(undefined, examined('2026-04-20')))).toEqual({ since: '2026-04-20', months: 1 });
  });

  it('counts months of the calendar, clamped to their ends', () => {
    const on = (today: string) =>
      idleInspection(lying('2026-01-31'), [MONTH], { lastDoneOn: undefined, today: day(today) });
    expect(on('2026-02-27')).toBeUndefined();
    expect(on('2026-02-28')).toEqual({ since: '2026-01-31', months: 1 });
  });

  it('goes by the shortest of two rules, and by none where none asks or nothing is known', () => {
    const three: Trigger = { when: 'afterIdle', months: 3 };
    expect(idle(lying('2026-05-01'), [three])).toBeUndefined();
    expect(idle(lying('2026-05-01'), [three, MONTH])).toEqual({ since: '2026-05-01', months: 1 });
    expect(idle(lying('2020-05-01'), [])).toBeUndefined();
    expect(idle(lying(undefined))).toBeUndefined();
  });

  it('is told of, and neither refused nor out of date: the check before use looks at it', () => {
    const rules = scheme([
      requirement([MONTH], { type: 'interimInspection', certificateRequired: false }),
      requirement([{ when: 'interval', months: 6 }]),
    ]);
    const item = lying('2026-05-01', examined('2026-03-01'));
    const report = dueDates(item, rules, TODAY);
    expect(report.inspections.map(({ idle: lain }) => lain)).toEqual([
      { since: '2026-05-01', months: 1 },
      undefined,
    ]);
    expect(report.cautions).toEqual(['long_idle']);
    expect(currency(report, TODAY, 30)).toBe('inDate');
    expect(fitness(item, line(), context({ scheme: rules }))).toMatchObject({
      fit: true,
      cautions: ['long_idle'],
    });
    expect(dueDates(lying('2026-05-20', examined('2026-03-01')), rules, TODAY).cautions).toEqual([]);
  });
});
