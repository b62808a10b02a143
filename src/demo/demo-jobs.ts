import type { NewJobDto } from '../jobs/jobs.dto.js';
import { addDays, type Day } from '../rules/calendar/day.js';
import { workDayFrom } from '../rules/programme/work-week.js';

/** The jobs of the demo scenario. */
export type DemoJob = 'past' | 'away' | 'canBeMet' | 'short' | 'light' | 'later' | 'unstated';

/** The stores that jobs load at: the quay and the yard. */
type Stores = readonly [quay: number, yard: number];

const WORK_DAYS_A_WEEK = 5;

/**
 * The jobs relative to today: `past` is over, `away` is out now, `light` and `later` are booked, and the others are to
 * be planned; `unstated` has yet to say what it lifts with.
 */
export function demoJobs(today: Day, stores: Stores): Record<DemoJob, NewJobDto> {
  return {
    past: past(today, stores),
    away: away(today, stores),
    canBeMet: canBeMet(today, stores),
    short: short(today, stores),
    light: light(today, stores),
    later: later(today, stores),
    unstated: unstated(today, stores),
  };
}

function past(today: Day, [quay]: Stores): NewJobDto {
  return {
    ...tallPanels(quay),
    reference: 'LM-2036',
    name: 'Curlew House, assembly room',
    site: 'Curlew House, Tern Walk, Larkmoor',
    loadOutDay: addDays(today, -21),
    backDay: addDays(today, -14),
    counts: counts(1, 6),
    parameters: [...lifterOf180Kg('PL-003'), liftHeight('3.7'), stillagesPerTruck('1')],
    panels: [
      panel('C1', { heightMm: '6200', massKg: '342', count: 16 }),
      panel('C2 door', { heightMm: '6200', massKg: '381', centreOffsetMm: '140', count: 2 }),
    ],
  };
}

function away(today: Day, [quay]: Stores): NewJobDto {
  return {
    ...tallPanels(quay),
    reference: 'LM-2042',
    name: 'Plover Pavilion, two halls',
    site: 'Plover Pavilion, Saltgate, Larkmoor',
    loadOutDay: addDays(today, -2),
    backDay: addDays(today, 8),
    counts: counts(2, 12),
    parameters: [...lifterOf180Kg('PL-003'), liftHeight('4.1'), stillagesPerTruck('2')],
    panels: [
      panel('P1', { heightMm: '7100', massKg: '455', count: 24 }),
      panel('P2 jamb', { heightMm: '7100', massKg: '248', count: 4 }),
    ],
  };
}

/** Its second truck is ordered too early: it comes while the first one's panels stand on every trolley there is. */
function canBeMet(today: Day, [quay]: Stores): NewJobDto {
  const loadOutDay = addDays(today, 6);
  const firstDay = workDayFrom(loadOutDay, WORK_DAYS_A_WEEK);
  return {
    ...tallPanels(quay),
    reference: 'LM-2047',
    name: 'Marram Hall, north wall',
    site: 'Marram Hall, Dune Road, Larkmoor',
    loadOutDay,
    backDay: addDays(today, 13),
    counts: counts(1, 6),
    parameters: [
      ...lifterOf180Kg('PL-012'),
      liftHeight('4.3'),
      { key: 'machineReachM', value: '2', reason: 'the wall stands 2 m in from where a handler can drive' },
      { key: 'spreaderBarMassKg', value: '64', reason: 'plate of SB-001, with its drop slings' },
      { key: 'floorPointLimitKg', value: '150', reason: 'letter on the parquet floor of the hall' },
      stillagesPerTruck('1'),
    ],
    truckTimes: [`${firstDay}T08:00`, `${firstDay}T09:00`, `${firstDay}T13:00`],
    panels: [
      panel('A1 pass door', { heightMm: '7450', massKg: '478', centreOffsetMm: '180', count: 2 }),
      panel('A2', { heightMm: '7450', massKg: '452', centreOffsetMm: '0', count: 12 }),
      panel('A3 glazed', { heightMm: '7450', arealMassKgPerM2: '48', fittingsKg: '18', count: 10 }),
      panel('A4 jamb', {
        heightMm: '7450',
        arealMassKgPerM2: '48',
        widthMm: '640',
        thicknessMm: '100',
        count: 2,
      }),
    ],
  };
}

function short(today: Day, [, yard]: Stores): NewJobDto {
  return {
    ...tallPanels(yard),
    reference: 'LM-2051',
    name: 'Sedge Arena, four bays at once',
    site: 'Sedge Arena, Reed Street, Ashby Fell',
    loadOutDay: addDays(today, 16),
    backDay: addDays(today, 30),
    counts: counts(4, 18),
    parameters: [
      { key: 'lifterMassKg', value: '205', reason: 'plate of PL-007' },
      { key: 'lifterCentreMm', value: '155', reason: 'instruction of the lifter, page 6' },
      liftHeight('5.2'),
      { key: 'machineReachM', value: '2.5', reason: 'measured on site, kerb to wall' },
      { key: 'dropSpacingM', value: '2.4', reason: 'length of the bars at the Brickfield yard' },
      { key: 'setUpDays', value: '1', reason: 'floor plates are laid first' },
      { key: 'clearDays', value: '1', reason: 'floor plates are lifted again' },
    ],
    panels: [panel('S1', { heightMm: '9100', widthMm: '1230', massKg: '715', count: 40 })],
  };
}

function light(today: Day, [quay]: Stores): NewJobDto {
  return {
    ...lightPanels(quay),
    reference: 'LM-2053',
    name: 'Wagtail School, dining hall',
    site: 'Wagtail School, Alder Lane, Larkmoor',
    loadOutDay: addDays(today, 14),
    backDay: addDays(today, 23),
    counts: lightCounts(2, 8),
    parameters: [
      ...lifterOf180Kg('PL-003'),
      liftHeight('2.6'),
      { key: 'machineReachM', value: '1.5', reason: 'the handler drives into the hall' },
      stillagesPerTruck('1'),
    ],
    panels: [
      lightPanel('W1', { arealMassKgPerM2: '42', fittingsKg: '9', count: 30 }),
      lightPanel('W2 pass door', { massKg: '236', centreOffsetMm: '90', count: 2 }),
    ],
  };
}

/** So far ahead that gear booked for it can still be examined in time. */
function later(today: Day, [quay]: Stores): NewJobDto {
  return {
    ...lightPanels(quay),
    reference: 'LM-2058',
    name: 'Redshank Library, reading room',
    site: 'Redshank Library, Causeway, Larkmoor',
    loadOutDay: addDays(today, 62),
    backDay: addDays(today, 69),
    counts: lightCounts(1, 6),
    parameters: [
      ...lifterOf180Kg('PL-003'),
      liftHeight('2.4'),
      { key: 'machineReachM', value: '1.5', reason: 'the handler drives up to the wall' },
      stillagesPerTruck('1'),
    ],
    panels: [lightPanel('L1', { arealMassKgPerM2: '42', fittingsKg: '9', count: 18 })],
  };
}

/** Entered before anybody knew which lifter goes, and how high. */
function unstated(today: Day, [quay]: Stores): NewJobDto {
  return {
    ...tallPanels(quay),
    reference: 'LM-2056',
    name: 'Dunlin Hotel, ballroom',
    site: 'Dunlin Hotel, Strand Parade, Larkmoor',
    loadOutDay: addDays(today, 33),
    backDay: addDays(today, 41),
    counts: counts(1, 18),
    panels: [panel('D1', { heightMm: '6400', arealMassKgPerM2: '46', fittingsKg: '15', count: 22 })],
  };
}

function tallPanels(storeId: number) {
  return { scheme: 'gb', method: 'tall-panel', storeId, otherStores: true };
}

function lightPanels(storeId: number) {
  return { ...tallPanels(storeId), method: 'light-panel' };
}

function lifterOf180Kg(tag: string): NonNullable<NewJobDto['parameters']> {
  return [
    { key: 'lifterMassKg', value: '180', reason: `plate of ${tag}; those of 600 kg are alike` },
    { key: 'lifterCentreMm', value: '140', reason: 'instruction of the lifter, page 4' },
  ];
}

function liftHeight(value: string) {
  return { key: 'liftHeightM', value, reason: 'track height on the drawing, less half a panel' };
}

function stillagesPerTruck(value: string) {
  return { key: 'stillagesPerTruck', value, reason: 'no more trolleys can stand in the hall' };
}

function counts(crews: number, panelsOnWheels: number) {
  return { crews, liftersInUse: crews, panelsOnWheels, trucksUnloading: 1, personsAloft: crews * 2 };
}

function lightCounts(crews: number, panelsOnWheels: number) {
  return { ...counts(crews, panelsOnWheels), personsAloft: 0 };
}

type Row = NewJobDto['panels'][number];

function panel(name: string, row: Partial<Row> & Pick<Row, 'heightMm' | 'count'>): Row {
  return { name, widthMm: '1210', thicknessMm: '112', packingKg: '22', ...row };
}

function lightPanel(name: string, row: Partial<Row> & Pick<Row, 'count'>): Row {
  return { name, heightMm: '4200', widthMm: '1100', thicknessMm: '86', packingKg: '9', ...row };
}
