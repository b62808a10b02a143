import type { InspectionType } from '../rules/gear/gear.js';
import type { Measure } from '../rules/quantities/marking.js';

/** A batch of like items of the demo scenario, all invented. */
export interface DemoBatch {
  readonly kind: string;
  readonly prefix: string;
  readonly count: number;
  readonly maker: string;
  /** Which store, by its place in the list of demo stores. */
  readonly store: 0 | 1;
  readonly rating?: { readonly measure: Measure; readonly value: string; readonly unit: string };
  readonly dimensions?: Readonly<Record<string, string>>;
  /** The inspection that keeps it in date in Great Britain, and how many months it holds. */
  readonly inspection: { readonly type: InspectionType; readonly months: number };
}

const THOROUGH_6 = { type: 'thoroughExamination', months: 6 } as const;
const THOROUGH_12 = { type: 'thoroughExamination', months: 12 } as const;
const INTERIM_12 = { type: 'interimInspection', months: 12 } as const;

const wll = (value: string, unit: string) => ({ measure: 'workingLoadLimit' as const, value, unit });
const lc = (value: string, unit: string) => ({ measure: 'lashingCapacity' as const, value, unit });
const capacity = (value: string, unit: string) => ({ measure: 'ratedCapacity' as const, value, unit });

/** The gear of the demo firm, about 300 items of every kind in two stores. */
export const DEMO_BATCHES: readonly DemoBatch[] = [
  {
    kind: 'ratchetStrap',
    prefix: 'RS',
    count: 48,
    maker: 'Marlpit',
    store: 0,
    rating: lc('2500', 'daN'),
    dimensions: { lengthM: '10' },
    inspection: INTERIM_12,
  },
  {
    kind: 'ratchetStrap',
    prefix: 'RS',
    count: 30,
    maker: 'Quenby',
    store: 0,
    rating: lc('1500', 'daN'),
    dimensions: { lengthM: '8' },
    inspection: INTERIM_12,
  },
  {
    kind: 'ratchetStrap',
    prefix: 'RS',
    count: 34,
    maker: 'Helm & Sile',
    store: 1,
    rating: lc('25', 'kN'),
    dimensions: { lengthM: '12' },
    inspection: INTERIM_12,
  },
  {
    kind: 'panelTrolley',
    prefix: 'PT',
    count: 36,
    maker: 'Tarrow',
    store: 0,
    rating: capacity('450', 'kg'),
    inspection: INTERIM_12,
  },
  {
    kind: 'panelTrolley',
    prefix: 'PT',
    count: 24,
    maker: 'Tarrow',
    store: 1,
    rating: capacity('0.6', 't'),
    inspection: INTERIM_12,
  },
  {
    kind: 'safetyLine',
    prefix: 'SL',
    count: 16,
    maker: 'Quenby',
    store: 0,
    dimensions: { lengthM: '15' },
    inspection: INTERIM_12,
  },
  {
    kind: 'safetyLine',
    prefix: 'SL',
    count: 10,
    maker: 'Quenby',
    store: 1,
    dimensions: { lengthM: '20' },
    inspection: INTERIM_12,
  },
  {
    kind: 'panelLifter',
    prefix: 'PL',
    count: 6,
    maker: 'Helm & Sile',
    store: 0,
    rating: wll('600', 'kg'),
    dimensions: { jawMinimumMm: '60', jawMaximumMm: '130' },
    inspection: THOROUGH_6,
  },
  {
    kind: 'panelLifter',
    prefix: 'PL',
    count: 4,
    maker: 'Marlpit',
    store: 1,
    rating: wll('0.8', 't'),
    dimensions: { jawMinimumMm: '60', jawMaximumMm: '140' },
    inspection: THOROUGH_6,
  },
  {
    kind: 'spreaderBar',
    prefix: 'SB',
    count: 4,
    maker: 'Tarrow',
    store: 0,
    rating: wll('1.5', 't'),
    dimensions: { lengthM: '3' },
    inspection: THOROUGH_6,
  },
  {
    kind: 'spreaderBar',
    prefix: 'SB',
    count: 3,
    maker: 'Tarrow',
    store: 1,
    rating: wll('3300', 'lb'),
    dimensions: { lengthM: '2.4' },
    inspection: THOROUGH_6,
  },
  {
    kind: 'sling',
    prefix: 'LS',
    count: 22,
    maker: 'Marlpit',
    store: 0,
    rating: wll('2', 't'),
    dimensions: { lengthM: '3' },
    inspection: THOROUGH_6,
  },
  {
    kind: 'shackle',
    prefix: 'SH',
    count: 26,
    maker: 'Quenby',
    store: 0,
    rating: wll('3.25', 't'),
    inspection: THOROUGH_6,
  },
  { kind: 'harness', prefix: 'HA', count: 12, maker: 'Tarrow', store: 0, inspection: THOROUGH_6 },
  {
    kind: 'lanyard',
    prefix: 'LY',
    count: 12,
    maker: 'Tarrow',
    store: 0,
    dimensions: { lengthM: '1.8' },
    inspection: THOROUGH_6,
  },
  {
    kind: 'hostMachine',
    prefix: 'HM',
    count: 4,
    maker: 'Helm & Sile',
    store: 1,
    rating: capacity('2.5', 't'),
    dimensions: { barDiameterMm: '60' },
    inspection: THOROUGH_12,
  },
  {
    kind: 'hostMachine',
    prefix: 'HM',
    count: 2,
    maker: 'Marlpit',
    store: 0,
    rating: capacity('4', 't'),
    dimensions: { barDiameterMm: '60' },
    inspection: THOROUGH_12,
  },
  {
    kind: 'workPlatform',
    prefix: 'WP',
    count: 5,
    maker: 'Marlpit',
    store: 0,
    rating: { measure: 'ratedPersons', value: '2', unit: 'persons' },
    inspection: THOROUGH_6,
  },
];

/** What makes some demo items unlike their batch, by tag: one or two in every state that there is. */
export const DEMO_ODDITIES = {
  neverExamined: ['RS-048', 'PT-036', 'SL-016', 'SH-026'],
  outOfDate: [
    'RS-005',
    'RS-006',
    'RS-082',
    'PT-003',
    'PT-038',
    'SL-003',
    'PL-002',
    'PL-009',
    'SB-003',
    'LS-004',
    'LS-005',
    'SH-007',
    'HA-004',
    'LY-006',
    'HM-003',
    'WP-005',
  ],
  dueInAFewDays: [
    'RS-001',
    'RS-002',
    'RS-003',
    'RS-004',
    'PT-001',
    'PT-002',
    'SL-001',
    'PL-001',
    'LS-001',
    'SH-001',
    'HA-001',
    'LY-001',
  ],
  reportMissing: ['PL-006', 'SH-012', 'LS-011'],
  labelIllegible: ['RS-017', 'LS-009'],
  serialUnknown: ['SH-020'],
  tooOld: ['HA-012', 'LY-012'],
  quarantined: ['RS-012', 'PT-015', 'LS-014'],
  underRepair: ['PT-020', 'PL-004'],
  scrapped: ['RS-030', 'RS-031', 'SL-009'],
  defectWithDeadline: ['PT-022', 'SB-002'],
  dropped: ['PL-005', 'SH-015'],
  otherInterval: ['RS-060'],
} as const satisfies Record<string, readonly string[]>;
