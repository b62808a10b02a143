import type { Figure, Working } from '../working.js';
import type { Programme, ProgrammeInput } from './programme-figures.js';

/** The workings of a programme, each to be keyed into a pocket calculator. Every fact is of the trade. */
export function programmeWorkings(input: ProgrammeInput, figures: Programme): readonly Working[] {
  return [
    ...loadWorkings(input, figures),
    ...trolleyWorkings(figures),
    hangingWorking(input, figures),
    ...peopleWorkings(input, figures),
    daysWorking(input, figures),
  ];
}

function loadWorkings(input: ProgrammeInput, { truckloads, pace }: Programme): Working[] {
  const perTruck = plain('panels a truck', pace.ticksPerMinute);
  return [
    ofTrade(
      'Panels of a full load',
      'panels a stillage × stillages a truck',
      [
        plain('panels a stillage', input.panelsPerStillage),
        plain('stillages a truck', input.stillagesPerTruck),
      ],
      perTruck,
    ),
    ofTrade(
      'Truckloads',
      'panels ÷ panels a truck, rounded up to whole trucks',
      [plain('panels', input.panels), perTruck],
      plain('truckloads', truckloads.length),
    ),
    ofTrade(
      'Panels of the last load',
      'panels − (truckloads − 1) × panels a truck',
      [plain('panels', input.panels), plain('truckloads', truckloads.length), perTruck],
      plain('panels of the last load', truckloads.at(-1) ?? 0),
    ),
  ];
}

function trolleyWorkings({ run, ...figures }: Programme): Working[] {
  const { at, panelsOnWheels } = run.most;
  const off = run.panels.filter(({ offAt }) => offAt <= at).length;
  const most = plain('most panels on wheels', panelsOnWheels);
  const byFirst = plain('most panels on wheels by then', run.mostByFirstEmpty);
  return [
    ofTrade(
      'Panels on wheels at the fullest moment',
      'panels off the trucks − panels hung',
      [plain('panels off the trucks', off), plain('panels hung', off - panelsOnWheels)],
      most,
    ),
    ofTrade(
      'Trolleys in all',
      'most panels on wheels × trolleys a panel',
      [most, TWO_TO_A_PANEL],
      plain('trolleys', figures.trolleys),
    ),
    ofTrade(
      'Trolleys ready before the first truck, to empty it',
      'most panels on wheels by then × trolleys a panel',
      [byFirst, TWO_TO_A_PANEL],
      plain('trolleys', figures.trolleysBeforeFirstTruck),
    ),
  ];
}

function hangingWorking(input: ProgrammeInput, { run, hangingMinutesPerCrew }: Programme): Working {
  const all = Math.ceil(input.panels / input.crews);
  const slow = Math.ceil(run.firstDayPanels / input.crews);
  return {
    ...ofTrade(
      'Hanging by the crew that hangs most',
      'panels on the first day × minutes a panel on the first day + panels after it × minutes a panel',
      [
        plain('panels on the first day', slow),
        { name: 'minutes a panel on the first day', value: String(input.firstDayHangMinutes), unit: 'min' },
        plain('panels after it', all - slow),
        { name: 'minutes a panel', value: String(input.hangMinutes), unit: 'min' },
      ],
      { name: 'hanging', value: String(hangingMinutesPerCrew), unit: 'min' },
    ),
    caution:
      'A forecast from steady work. No lift is hurried to keep to it, and none begins in wind or doubt.',
  };
}

function peopleWorkings(input: ProgrammeInput, { people }: Programme): Working[] {
  const crew = input.personsAtGround + input.personsAloft + input.drivers;
  const all = people.ground + people.aloft + people.drivers + people.unloading;
  const inCrew = plain('people of a crew', crew);
  return [
    ofTrade(
      'People of a crew',
      'at the ground + aloft + drivers',
      [
        plain('at the ground', input.personsAtGround),
        plain('aloft', input.personsAloft),
        plain('drivers', input.drivers),
      ],
      inCrew,
    ),
    ofTrade(
      'People on the site',
      'people of a crew × crews + people at a truck × trucks unloading',
      [
        inCrew,
        plain('crews', input.crews),
        plain('people at a truck', input.unloadPersons),
        plain('trucks unloading', input.trucksUnloading),
      ],
      plain('people', all),
    ),
  ];
}

function daysWorking(input: ProgrammeInput, { workingDays, window }: Programme): Working {
  return ofTrade(
    `Working days, of ${window.hasDays} that the job has`,
    'setting up + unloading and hanging + clearing',
    [
      { name: 'setting up', value: String(input.setUpDays), unit: 'd' },
      { name: 'unloading and hanging', value: String(workingDays), unit: 'd' },
      { name: 'clearing', value: String(input.clearDays), unit: 'd' },
    ],
    { name: 'working days', value: String(window.neededDays), unit: 'd' },
  );
}

const TWO_TO_A_PANEL = plain('trolleys a panel', 2);

function plain(name: string, value: number): Figure {
  return { name, value: String(value), unit: '' };
}

function ofTrade(title: string, formula: string, inputs: readonly Figure[], result: Figure): Working {
  return { title, formula, inputs, result, source: 'common-practice' };
}
