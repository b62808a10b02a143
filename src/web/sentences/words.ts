import type { Day } from '../../rules/calendar/day.js';
import type { Condition, Duty, EventType, InspectionType } from '../../rules/gear/gear.js';
import { Exact } from '../../rules/quantities/exact.js';
import type { Measure } from '../../rules/quantities/marking.js';

/** The words people read for the names that rules and records use. */

export const CONDITION_NAMES: Readonly<Record<Condition, string>> = {
  inService: 'in service',
  quarantined: 'quarantined',
  underRepair: 'under repair',
  scrapped: 'scrapped',
};

export const DUTY_NAMES: Readonly<Record<Duty, string>> = {
  lifting: 'lifting',
  lashing: 'lashing',
  carrying: 'carrying',
  steadying: 'steadying',
  fallArrest: 'fall arrest',
  hosting: 'hosting',
};

export const INSPECTION_NAMES: Readonly<Record<InspectionType, string>> = {
  preUseCheck: 'pre-use check',
  interimInspection: 'interim inspection',
  thoroughExamination: 'thorough examination',
  proofLoadTest: 'proof load test',
};

export const EVENT_NAMES: Readonly<Record<EventType, string>> = {
  dropped: 'dropped',
  overloaded: 'overloaded',
  altered: 'altered',
  repaired: 'repaired',
  longIdle: 'out of use for long',
};

export const MEASURE_NAMES: Readonly<Record<Measure, string>> = {
  workingLoadLimit: 'working load limit',
  lashingCapacity: 'lashing capacity',
  ratedCapacity: 'rated capacity',
  ratedPersons: 'rated persons',
};

/** The marks of the trade: WLL and LC as the plates themselves carry them. */
export const SHORT_MEASURES: Readonly<Record<Measure, string>> = {
  workingLoadLimit: 'WLL',
  lashingCapacity: 'LC',
  ratedCapacity: 'capacity',
  ratedPersons: 'for',
};

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** A day as people write it, in an order that nobody can misread: `3 May 2026`. */
export function day(value: Day | string): string {
  const [year, month, date] = value.split('-').map(Number);
  return `${date} ${MONTHS[(month ?? 1) - 1]} ${year}`;
}

/** A day without its year, where the year is plain: `3 May`. */
export function shortDay(value: Day | string): string {
  return day(value).replace(/ \d+$/, '');
}

/** A wall time at a site: `1 December 2026, 08:30`. */
export function localTime(value: string): string {
  return `${day(value.slice(0, 10))}, ${value.slice(11, 16)}`;
}

/** A moment as it is kept, in UTC and said to be: `1 December 2026, 08:30 UTC`. */
export function instant(value: string): string {
  return `${localTime(value)} UTC`;
}

/** A name such as `jawMaximumMm` in words: `jaw maximum`. */
export function sizeName(name: string): string {
  return name
    .replace(/(Mm|M|Kg)$/, '')
    .replace(/([A-Z])/g, ' $1')
    .toLowerCase()
    .trim();
}

/** Decimal text with thin spaces between the thousands and its unit: `2 500 daN`. */
export function figure(value: string, unit = ''): string {
  const [whole = '', fraction] = value.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, '\u202f');
  const symbol = unit.replace(/2$/, '²');
  return `${grouped}${fraction ? `.${fraction}` : ''}${symbol ? `\u00a0${symbol}` : ''}`;
}

/** A figure that something must reach, in the unit people read it in and never below what is needed: `117.2 daN`. */
export function needFigure(value: string, unit = ''): string {
  return readable(value, unit, 'up');
}

/** A figure that something has, in the unit people read it in and never above what it has: `2 500 daN`. */
export function hasFigure(value: string, unit = ''): string {
  return readable(value, unit, 'down');
}

function readable(value: string, unit: string, rounding: 'up' | 'down'): string {
  if (unit !== 'N' && unit !== 'kg') return figure(value, unit);
  const divisor = Exact.of(unit === 'N' ? '10' : '1');
  return figure(
    Exact.of(value).dividedBy(divisor, { places: 1, rounding }).toString(),
    unit === 'N' ? 'daN' : unit,
  );
}

/** `1 strap`, `2 straps`. */
export function count(number: number, one: string, many: string): string {
  return `${number} ${number === 1 ? one : many}`;
}

/** `Quay`, `Quay and Yard`, `Quay, Yard and Shed`. */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
