import type { Citation } from '../citation.js';

/** What a figure is: its unit, the part of the sheet that it stands in, and whether it counts whole things. */
export interface ParameterDefinition {
  readonly unit: string;
  readonly group: CalculationKey;
  readonly whole?: true;
}

/** Every figure that a calculation of a lift can be told. */
export const PARAMETERS = {
  handlingFactor: { unit: '', group: 'lifting' },
  barDiameterMm: { unit: 'mm', group: 'lifting' },
  spreaderBarMassKg: { unit: 'kg', group: 'unloading' },
  dropSpacingM: { unit: 'm', group: 'unloading' },
  topLegLengthM: { unit: 'm', group: 'unloading' },
  leastLegAngleDeg: { unit: '°', group: 'unloading' },
  lifterDepthM: { unit: 'm', group: 'strapping' },
  strapTailM: { unit: 'm', group: 'strapping' },
  sidewaysShare: { unit: '', group: 'strapping' },
  leastSpacingM: { unit: 'm', group: 'supports' },
  spacingM: { unit: 'm', group: 'supports' },
  greatestOverhangShare: { unit: '', group: 'supports' },
  castorsPerTrolley: { unit: '', group: 'supports', whole: true },
  floorPointLimitKg: { unit: 'kg', group: 'supports' },
  lifterMassKg: { unit: 'kg', group: 'hosting' },
  riggingMassKg: { unit: 'kg', group: 'hosting' },
  lifterCentreMm: { unit: 'mm', group: 'hosting' },
  liftHeightM: { unit: 'm', group: 'hosting' },
  machineReachM: { unit: 'm', group: 'hosting' },
  standOffM: { unit: 'm', group: 'steadying' },
  platformReachM: { unit: 'm', group: 'platform' },
  panelsPerStillage: { unit: '', group: 'programme', whole: true },
  stillagesPerTruck: { unit: '', group: 'programme', whole: true },
  unloadMinutes: { unit: 'min', group: 'programme', whole: true },
  hangMinutes: { unit: 'min', group: 'programme', whole: true },
  firstDayHangMinutes: { unit: 'min', group: 'programme', whole: true },
  dayStartMinutes: { unit: 'min', group: 'programme', whole: true },
  workMinutesPerDay: { unit: 'min', group: 'programme', whole: true },
  workDaysPerWeek: { unit: 'd', group: 'programme', whole: true },
  setUpDays: { unit: 'd', group: 'programme', whole: true },
  clearDays: { unit: 'd', group: 'programme', whole: true },
  unloadPersons: { unit: '', group: 'programme', whole: true },
  personsAtGround: { unit: '', group: 'programme', whole: true },
  personsAloft: { unit: '', group: 'programme', whole: true },
  drivers: { unit: '', group: 'programme', whole: true },
} as const satisfies Readonly<Record<string, ParameterDefinition>>;
export type ParameterKey = keyof typeof PARAMETERS;

/** The calculations that a method can ask for, in the order of the sheet. */
export const CALCULATIONS = [
  'lifting',
  'unloading',
  'strapping',
  'supports',
  'hosting',
  'steadying',
  'platform',
  'programme',
] as const;
export type CalculationKey = (typeof CALCULATIONS)[number];

/** A figure of a method as `config/methods/*.yaml` states it. Numbers are exact decimal text in the unit of the key. */
export interface MethodParameter {
  readonly key: ParameterKey;
  readonly label: string;
  /** Null where no job can do without a figure of its own, or where the calculation can do without. */
  readonly value: string | null;
  /** True where the calculation can do without it. */
  readonly optional: boolean;
  /** The limits that a job may state it within, both allowed. */
  readonly least: string;
  readonly most: string;
  readonly caution?: string;
  readonly source: Citation;
}

/** A figure that a job states for itself, with where it comes from. */
export interface StatedParameter {
  readonly key: string;
  readonly value: string;
  readonly reason: string;
}

/** The parameters that a calculation uses. */
export function parametersOf(calculation: CalculationKey): readonly ParameterKey[] {
  return PARAMETER_KEYS.filter((key) => PARAMETERS[key].group === calculation);
}

export const PARAMETER_KEYS = Object.keys(PARAMETERS).filter(isParameterKey);

export function isParameterKey(key: string): key is ParameterKey {
  return Object.hasOwn(PARAMETERS, key);
}
