import { toDay } from '../../src/rules/calendar/day.js';
import type { Work } from '../../src/rules/programme/pace.js';

/** The usual figures of tall panels, common practice, no source: 18 a truck, 30 minutes to unload, 15 to hang, 25 on the first day. */
export function tallPanels(stated: Partial<Work> = {}): Work {
  return {
    panels: 40,
    crews: 1,
    trucksUnloading: 1,
    panelsOnWheels: 20,
    panelsPerStillage: 6,
    stillagesPerTruck: 3,
    unloadMinutes: 30,
    hangMinutes: 15,
    firstDayHangMinutes: 25,
    dayStartMinutes: 450,
    workMinutesPerDay: 480,
    workDaysPerWeek: 5,
    // A Monday.
    firstWorkDay: toDay('2026-11-30'),
    ...stated,
  };
}
