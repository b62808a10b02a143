import { describe, expect, it } from 'vitest';
import { toDay } from '../../src/rules/calendar/day.js';
import { alternatives } from '../../src/rules/programme/alternatives.js';
import { planTrucks } from '../../src/rules/programme/plan-trucks.js';
import type { Programme, ProgrammeInput } from '../../src/rules/programme/programme-figures.js';
import { programme } from '../../src/rules/programme/programme.js';
import { tallPanels } from './programme-example.js';

/** All durations and counts: common practice, no source. The arithmetic beside them is by hand. */
function job(stated: Partial<ProgrammeInput> = {}): ProgrammeInput {
  return {
    ...tallPanels(),
    truckTimes: [],
    personsAtGround: 2,
    personsAloft: 2,
    drivers: 1,
    unloadPersons: 4,
    window: { from: toDay('2026-11-27'), to: toDay('2026-12-02') },
    setUpDays: 1,
    clearDays: 1,
    ...stated,
  };
}

function figuresOf(stated: Partial<ProgrammeInput> = {}): Programme {
  const result = programme(job(stated));
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.figures;
}

function problemsOf(stated: Partial<ProgrammeInput>): unknown {
  const result = programme(job(stated));
  return result.ok ? [] : result.problems;
}

describe('a programme worked by hand', () => {
  // Monday 07:30 to 15:30, one crew, 20 pairs, 40 panels: 18 + 18 + 4. Panel 1 is off at 07:31:40; on Monday a panel
  // takes 25 minutes: 478 1/3 minutes are left, 19 panels, the 19th hung at 1 2/3 + 475 = 476 2/3. The other 21 are
  // hung on Tuesday, 15 minutes each: 315 minutes, at 12:45.
  // Truck 2: minute 372 (see programme-earliest-trucks.test.ts), 13:42. Truck 3 brings panels 37 to 40: 36 must be
  // on site and panel 36 + j needs 16 + j hung: the 17th at 426 2/3, 18th 451 2/3, 19th 476 2/3, 20th Tuesday minute
  // 15 (495). Begin at least 495 - 4 x 30/18 = 488 1/3, so minute 489: Tuesday 07:39.
  const figures = figuresOf();

  it('times the trucks', () => {
    expect(figures.truckloads).toEqual([18, 18, 4]);
    const times = { stated: false, exceedsLimit: false };
    expect(figures.trucks).toEqual([
      {
        ...times,
        truck: 1,
        panels: 18,
        arrives: '2026-11-30T07:30',
        begins: '2026-11-30T07:30',
        empty: '2026-11-30T08:00',
        mostOnWheels: 17,
      },
      {
        ...times,
        truck: 2,
        panels: 18,
        arrives: '2026-11-30T13:42',
        begins: '2026-11-30T13:42',
        empty: '2026-11-30T14:12',
        mostOnWheels: 20,
      },
      {
        ...times,
        truck: 3,
        panels: 4,
        arrives: '2026-12-01T07:39',
        begins: '2026-12-01T07:39',
        // 4 x 30/18 = 6 2/3 minutes.
        empty: '2026-12-01T07:46',
        mostOnWheels: 20,
      },
    ]);
  });

  it('counts trolleys, days and people', () => {
    expect([figures.mostOnWheels, figures.trolleys, figures.trolleysBeforeFirstTruck]).toEqual([20, 40, 34]);
    expect([figures.firstDay, figures.lastDay, figures.workingDays]).toEqual(['2026-11-30', '2026-12-01', 2]);
    expect(figures.finishes).toBe('2026-12-01T12:45');
    expect(figures.days).toEqual(['2026-11-30', '2026-12-01']);
    // 19 x 25 + 21 x 15 = 475 + 315
    expect(figures.hangingMinutesPerCrew).toBe(790);
    expect(figures.people).toEqual({ ground: 2, aloft: 2, drivers: 1, unloading: 4 });
    expect(figures.window).toEqual({
      fits: true,
      neededDays: 4,
      hasDays: 4,
      startsOn: '2026-11-27',
      endsOn: '2026-12-02',
    });
    expect(figures.notices).toEqual([]);
  });

  it('says what one more crew and ten more trolleys would change', () => {
    const { alternatives: rows } = figures;
    expect(rows.map(({ change, crews, panelsOnWheels }) => [change, crews, panelsOnWheels])).toEqual([
      ['asPlanned', 1, 20],
      ['oneMoreCrew', 2, 20],
      ['fiveMoreOnWheels', 1, 25],
    ]);
    expect(rows[0]).toMatchObject({ finishes: '2026-12-01T12:45', lastTruckArrives: '2026-12-01T07:39' });
    // Two crews on Monday: panels 2k-1 and 2k; the 38th is hung 19 cycles after panel 2 is off at 3 1/3: 478 1/3.
    // Panels 39 and 40 on Tuesday: 07:45. Truck 3 needs panels 17 to 20 hung: 17th at 1 2/3 + 9 x 25 = 226 2/3, 18th
    // 228 1/3, 19th 251 2/3, 20th 253 1/3; begin at 251 2/3 - 5 = 246 2/3 and 253 1/3 - 6 2/3 = 246 2/3: minute 247.
    expect(rows[1]).toMatchObject({ finishes: '2026-12-01T07:45', lastTruckArrives: '2026-11-30T11:37' });
    // 25 pairs: panel 40 needs the 15th hung, 376 2/3 - 6 2/3 = 370; panel 37 the 12th, 301 2/3 - 1 2/3 = 300.
    expect(rows[2]).toMatchObject({ finishes: '2026-12-01T12:45', lastTruckArrives: '2026-11-30T13:40' });
    expect(figuresOf({ panelsOnWheels: 0 }).alternatives.map(({ change }) => change)).toEqual([
      'asPlanned',
      'oneMoreCrew',
    ]);
  });

  it('shows its workings', () => {
    const result = programme(job());
    const source = 'common-practice';
    const bare = (name: string, value: string) => ({ name, value, unit: '' });
    const min = (name: string, value: string) => ({ name, value, unit: 'min' });
    const d = (name: string, value: string) => ({ name, value, unit: 'd' });
    expect(result.ok && result.workings).toEqual([
      {
        title: 'Panels of a full load',
        formula: 'panels a stillage × stillages a truck',
        inputs: [bare('panels a stillage', '6'), bare('stillages a truck', '3')],
        result: bare('panels a truck', '18'),
        source,
      },
      {
        title: 'Truckloads',
        formula: 'panels ÷ panels a truck, rounded up to whole trucks',
        inputs: [bare('panels', '40'), bare('panels a truck', '18')],
        result: bare('truckloads', '3'),
        source,
      },
      {
        title: 'Panels of the last load',
        formula: 'panels − (truckloads − 1) × panels a truck',
        inputs: [bare('panels', '40'), bare('truckloads', '3'), bare('panels a truck', '18')],
        result: bare('panels of the last load', '4'),
        source,
      },
      {
        title: 'Panels on wheels at the fullest moment',
        formula: 'panels off the trucks − panels hung',
        // Truck 2 from minute 372; the 15th is hung at 376 2/3, the 16th at 401 2/3. Its 17th panel, the 35th in all,
        // is off at 372 + 17 x 30/18 = 400 1/3 with 15 hung: the first time that 20 are on wheels.
        inputs: [bare('panels off the trucks', '35'), bare('panels hung', '15')],
        result: bare('most panels on wheels', '20'),
        source,
      },
      {
        title: 'Trolleys in all',
        formula: 'most panels on wheels × trolleys a panel',
        inputs: [bare('most panels on wheels', '20'), bare('trolleys a panel', '2')],
        result: bare('trolleys', '40'),
        source,
      },
      {
        title: 'Trolleys ready before the first truck, to empty it',
        formula: 'most panels on wheels by then × trolleys a panel',
        inputs: [bare('most panels on wheels by then', '17'), bare('trolleys a panel', '2')],
        result: bare('trolleys', '34'),
        source,
      },
      {
        title: 'Hanging by the crew that hangs most',
        formula:
          'panels on the first day × minutes a panel on the first day + panels after it × minutes a panel',
        inputs: [
          bare('panels on the first day', '19'),
          min('minutes a panel on the first day', '25'),
          bare('panels after it', '21'),
          min('minutes a panel', '15'),
        ],
        result: min('hanging', '790'),
        source,
        caution:
          'A forecast from steady work. No lift is hurried to keep to it, and none begins in wind or doubt.',
      },
      {
        title: 'People of a crew',
        formula: 'at the ground + aloft + drivers',
        inputs: [bare('at the ground', '2'), bare('aloft', '2'), bare('drivers', '1')],
        result: bare('people of a crew', '5'),
        source,
      },
      {
        title: 'People on the site',
        formula: 'people of a crew × crews + people at a truck × trucks unloading',
        inputs: [
          bare('people of a crew', '5'),
          bare('crews', '1'),
          bare('people at a truck', '4'),
          bare('trucks unloading', '1'),
        ],
        result: bare('people', '9'),
        source,
      },
      {
        title: 'Working days, of 4 that the job has',
        formula: 'setting up + unloading and hanging + clearing',
        inputs: [d('setting up', '1'), d('unloading and hanging', '2'), d('clearing', '1')],
        result: d('working days', '4'),
        source,
      },
    ]);
  });

  it('shares the panels and the people out over two crews and two places', () => {
    const two = figuresOf({ panels: 3, crews: 2, trucksUnloading: 2 });
    // The first crew hangs panels 1 and 3.
    expect(two.hangingMinutesPerCrew).toBe(50);
    expect(two.people).toEqual({ ground: 4, aloft: 4, drivers: 2, unloading: 8 });
  });
});

describe('stated trucks', () => {
  it('come when they are stated, and the missing ones as early as they may after them', () => {
    // Truck 2 with 16 on wheels 25 minutes from the start, stated: it passes the limit and is said to.
    const { trucks } = figuresOf({ truckTimes: ['2026-11-30T07:30', '2026-11-30T08:00'] });
    expect(trucks.map(({ stated, arrives }) => [stated, arrives])).toEqual([
      [true, '2026-11-30T07:30'],
      [true, '2026-11-30T08:00'],
      // As if truck 2 had come at 13:42: it is the 20th panel hung that lets panel 40 off.
      [false, '2026-12-01T07:39'],
    ]);
    // 36 panels off by 08:30, minute 60; panels 1 and 2 are hung at 26 2/3 and 51 2/3.
    expect(trucks.map(({ exceedsLimit, mostOnWheels }) => [exceedsLimit, mostOnWheels])).toEqual([
      [false, 17],
      [true, 34],
      [false, 20],
    ]);
  });

  it('that are not needed are said and left out', () => {
    const truckTimes = ['2026-11-30T07:30', '2026-12-01T07:30', '2026-12-02T07:30', '2026-12-02T08:30'];
    const figures = figuresOf({ truckTimes });
    expect(figures.trucks).toHaveLength(3);
    expect(figures.notices).toEqual([{ code: 'truck_not_needed', subject: '2026-12-02T08:30' }]);
    expect(figures.window).toMatchObject({ fits: false, endsOn: '2026-12-03', neededDays: 5, hasDays: 4 });
  });

  it('run with too few trolleys too, since they are given: what lacks is shown', () => {
    const figures = figuresOf({ panels: 18, panelsOnWheels: 5, truckTimes: ['2026-11-30T07:30'] });
    expect(figures.trucks[0]).toMatchObject({ exceedsLimit: true, mostOnWheels: 17 });
  });

  it('that arrive late wait for the morning, and the work starts there', () => {
    const figures = figuresOf({ panels: 18, truckTimes: ['2026-11-30T15:01'] });
    expect(figures.trucks[0]).toMatchObject({ arrives: '2026-11-30T15:01', begins: '2026-12-01T07:30' });
    expect([figures.firstDay, figures.workingDays]).toEqual(['2026-12-01', 1]);
    expect(figuresOf({ panels: 18, truckTimes: ['2026-11-30T15:00'] }).trucks[0]?.begins).toBe(
      '2026-11-30T15:00',
    );
  });

  it.each([
    { truckTimes: ['tomorrow'], code: 'truck_time_unreadable', subject: 'tomorrow' },
    { truckTimes: ['2026-11-31T08:00'], code: 'truck_time_unreadable', subject: '2026-11-31T08:00' },
    { truckTimes: ['2026-11-30T24:00'], code: 'truck_time_unreadable', subject: '2026-11-30T24:00' },
    { truckTimes: ['2026-11-30T08:60'], code: 'truck_time_unreadable', subject: '2026-11-30T08:60' },
    { truckTimes: ['2026-11-30T08:00Z'], code: 'truck_time_unreadable', subject: '2026-11-30T08:00Z' },
    { truckTimes: ['x2026-11-30T08:00'], code: 'truck_time_unreadable', subject: 'x2026-11-30T08:00' },
    {
      truckTimes: ['2026-11-30T08:01', '2026-11-30T08:00'],
      code: 'truck_time_unreadable',
      subject: '2026-11-30T08:00',
    },
    { truckTimes: ['2026-11-30T07:29'], code: 'truck_outside_working_hours', subject: '2026-11-30T07:29' },
    { truckTimes: ['2026-11-30T15:30'], code: 'truck_outside_working_hours', subject: '2026-11-30T15:30' },
    { truckTimes: ['2026-11-27T08:00'], code: 'truck_outside_working_hours', subject: '2026-11-27T08:00' },
    { truckTimes: ['2026-12-05T08:00'], code: 'truck_outside_working_hours', subject: '2026-12-05T08:00' },
  ])('are refused: $truckTimes', ({ truckTimes, code, subject }) => {
    expect(problemsOf({ truckTimes })).toEqual([{ code, subject }]);
  });

  it.each([
    [['2026-11-30T07:30', '2026-11-30T07:30']],
    [['2026-11-30T15:29']],
    [['2026-12-04T08:00', '2026-12-07T08:00']],
  ])('are taken: %s', (truckTimes) => {
    expect(problemsOf({ truckTimes })).toEqual([]);
  });
});

describe('a programme is refused', () => {
  it.each([
    { panels: 0, needed: '1', has: '0' },
    { panels: 100_001, needed: '100000', has: '100001' },
    { crews: 0, needed: '1', has: '0' },
    { crews: 51, needed: '50', has: '51' },
    { crews: 1.5, needed: '1', has: '1.5' },
    { trucksUnloading: 0, needed: '1', has: '0' },
    { trucksUnloading: 21, needed: '20', has: '21' },
    { panelsOnWheels: -1, needed: '0', has: '-1' },
    { panelsOnWheels: 100_001, needed: '100000', has: '100001' },
    { panelsPerStillage: 0, needed: '1', has: '0' },
    { panelsPerStillage: 101, needed: '100', has: '101' },
    { stillagesPerTruck: 0, needed: '1', has: '0' },
    { stillagesPerTruck: 51, needed: '50', has: '51' },
    { unloadMinutes: 0, needed: '1', has: '0' },
    { unloadMinutes: 1441, needed: '1440', has: '1441' },
    { hangMinutes: 0, needed: '1', has: '0' },
    { hangMinutes: 1441, needed: '1440', has: '1441' },
    { firstDayHangMinutes: 0, needed: '1', has: '0' },
    { firstDayHangMinutes: 1441, needed: '1440', has: '1441' },
    { dayStartMinutes: -1, needed: '0', has: '-1' },
    { dayStartMinutes: 1440, needed: '1439', has: '1440' },
    { workMinutesPerDay: 0, needed: '1', has: '0' },
    { workMinutesPerDay: 1441, needed: '1440', has: '1441' },
    { workDaysPerWeek: 4, needed: '5', has: '4' },
    { workDaysPerWeek: 8, needed: '7', has: '8' },
    { personsAtGround: 0, needed: '1', has: '0' },
    { personsAtGround: 51, needed: '50', has: '51' },
    { personsAloft: -1, needed: '0', has: '-1' },
    { personsAloft: 51, needed: '50', has: '51' },
    { drivers: 0, needed: '1', has: '0' },
    { drivers: 51, needed: '50', has: '51' },
    { unloadPersons: 0, needed: '1', has: '0' },
    { unloadPersons: 51, needed: '50', has: '51' },
    { setUpDays: -1, needed: '0', has: '-1' },
    { setUpDays: 366, needed: '365', has: '366' },
    { clearDays: -1, needed: '0', has: '-1' },
    { clearDays: 366, needed: '365', has: '366' },
  ])('for a figure out of range: %o', ({ needed, has, ...stated }) => {
    const [subject] = Object.keys(stated);
    expect(problemsOf(stated)).toEqual([{ code: 'parameter_out_of_range', subject, needed, has }]);
  });

  it('for what is no number or day at all, with every problem at once', () => {
    const stated = {
      panels: Number.NaN,
      crews: Infinity,
      firstWorkDay: 'soon' as ProgrammeInput['firstWorkDay'],
      drivers: 0,
      window: { from: toDay('2026-12-02'), to: toDay('2026-12-01') },
    };
    expect(problemsOf(stated)).toEqual([
      { code: 'parameter_out_of_range', subject: 'panels' },
      { code: 'parameter_out_of_range', subject: 'crews' },
      { code: 'parameter_out_of_range', subject: 'firstWorkDay' },
      { code: 'parameter_out_of_range', subject: 'drivers', needed: '1', has: '0' },
      { code: 'parameter_out_of_range', subject: 'window' },
    ]);
    const sameDay = { from: toDay('2026-12-01'), to: toDay('2026-12-01') };
    expect(problemsOf({ window: sameDay })).toEqual([]);
    const noDay = 'x' as ProgrammeInput['firstWorkDay'];
    for (const window of [
      { ...sameDay, from: noDay },
      { ...sameDay, to: noDay },
    ]) {
      expect(problemsOf({ window })).toEqual([{ code: 'parameter_out_of_range', subject: 'window' }]);
    }
  });

  it('for a day that runs past midnight', () => {
    expect(problemsOf({ dayStartMinutes: 960 })).toEqual([]);
    expect(problemsOf({ dayStartMinutes: 961 })).toEqual([
      {
        code: 'parameter_out_of_range',
        subject: 'workMinutesPerDay',
        needed: '479',
        has: '480',
        unit: 'min',
      },
    ]);
  });

  it('for a first day quicker than the rest', () => {
    expect(problemsOf({ firstDayHangMinutes: 15 })).toEqual([]);
    expect(problemsOf({ firstDayHangMinutes: 14 })).toEqual([
      {
        code: 'parameter_out_of_range',
        subject: 'firstDayHangMinutes',
        needed: '15',
        has: '14',
        unit: 'min',
      },
    ]);
  });

  it('for a load or a cycle longer than the day', () => {
    expect(problemsOf({ unloadMinutes: 480, panelsOnWheels: 0 })).toEqual([]);
    expect(problemsOf({ unloadMinutes: 481, hangMinutes: 481, firstDayHangMinutes: 482 })).toEqual([
      { code: 'load_longer_than_day', subject: 'unloadMinutes', needed: '481', has: '480', unit: 'min' },
      { code: 'load_longer_than_day', subject: 'hangMinutes', needed: '481', has: '480', unit: 'min' },
      {
        code: 'load_longer_than_day',
        subject: 'firstDayHangMinutes',
        needed: '482',
        has: '480',
        unit: 'min',
      },
    ]);
    // 7 of 18 panels: 1240 x 7 / 18 = 482.2222222 minutes; 6 of 18: 413.3.
    expect(problemsOf({ panels: 7, unloadMinutes: 1240 })).toEqual([
      {
        code: 'load_longer_than_day',
        subject: 'unloadMinutes',
        needed: '482.222223',
        has: '480',
        unit: 'min',
      },
    ]);
    expect(problemsOf({ panels: 6, unloadMinutes: 1240 })).toEqual([]);
  });

  it('for too few trolleys ever to empty a truck', () => {
    expect(problemsOf({ panelsOnWheels: 17 })).toEqual([]);
    expect(problemsOf({ panelsOnWheels: 16 })).toEqual([
      { code: 'work_never_ends', subject: 'panelsOnWheels', needed: '17', has: '16' },
    ]);
  });
});

describe('alternatives with two places for unloading', () => {
  // Found by search: with one more pair the second truck comes at once with the first, and the work of trucks that
  // each come as early as they can would end a tick later, 99 for 98.
  const work = tallPanels({
    panels: 18,
    crews: 3,
    trucksUnloading: 2,
    panelsOnWheels: 5,
    panelsPerStillage: 3,
    stillagesPerTruck: 1,
    unloadMinutes: 4,
    hangMinutes: 2,
    firstDayHangMinutes: 7,
    workMinutesPerDay: 26,
  });

  it('never make the work longer', () => {
    const planned = planTrucks(work, []);
    const more = planTrucks({ ...work, panelsOnWheels: 6 }, []);
    if (!planned.ok || !more.ok) throw new Error('the work ends');
    expect(more.run.finishesAt).toBeGreaterThan(planned.run.finishesAt);
    // An offer of five more pairs that comes to six: the trucks as planned are kept.
    const kept = alternatives({ ...work, panelsOnWheels: 1 }, [], planned.run).at(-1);
    expect(kept?.panelsOnWheels).toBe(6);
    expect(kept?.run.finishesAt).toBe(planned.run.finishesAt);
    expect(kept?.run.trucks.map(({ arrivesAt }) => arrivesAt)).toEqual(
      planned.run.trucks.map(({ arrivesAt }) => arrivesAt),
    );
  });
});

it('takes ten thousand panels', () => {
  // 10,000 ÷ 18 panels a truck, the last one part loaded.
  expect(figuresOf({ panels: 10_000, crews: 3, panelsOnWheels: 40 }).trucks).toHaveLength(556);
});
