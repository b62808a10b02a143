import { Clock } from '../../src/clock.js';
import { addDays, type Day } from '../../src/rules/calendar/day.js';
import type { Settings } from '../../src/settings.js';
import type { Engine } from './engines.js';
import { startGearServer, type GearServer } from './gear-server.js';

/** A server with a yard full of gear to plan with. Days are counted from today, so that the tests hold on any day. */
export interface GearYard extends GearServer {
  /** The second store, some way off. */
  readonly farStoreId: number;
  /** The day so many days from today. */
  readonly day: (offset: number) => Day;
  /** An item of the register that was examined `examinedDaysAgo` (10 when left out; null for never). */
  gear(tag: string, differences?: GearDifferences): Promise<{ id: number; tag: string }>;
  /** A job that needs panel lifters only, unless said otherwise. Gives its number. */
  job(differences?: JobDifferences): Promise<number>;
}

export interface GearDifferences {
  readonly kind?: string;
  readonly storeId?: number;
  /** As stamped, such as `['500', 'kg']`. */
  readonly rating?: readonly [value: string, unit: string];
  readonly examinedDaysAgo?: number | null;
  readonly labelLegible?: boolean;
}

export interface JobDifferences {
  readonly reference?: string;
  /** The lines of the method that are kept; the others are dropped with a reason. */
  readonly only?: readonly string[];
  readonly lifters?: number;
  readonly massKg?: string;
  readonly from?: number;
  readonly to?: number;
  readonly otherStores?: boolean;
}

const LINES = [
  'panelLifter',
  'hostMachine',
  'strapsRoundWidth',
  'strapsUnderBottomRail',
  'safetyLines',
  'panelTrolleys',
  'spreaderBar',
  'topLegs',
  'dropSlings',
  'shackles',
  'harnesses',
  'lanyards',
  'workPlatform',
];

/** What a job of the method states; no allowance for handling, so that a panel of 478 kg needs a lifter of 478 kg. */
export const PARAMETERS = [
  { key: 'handlingFactor', value: '1', reason: 'hung by hand in this test' },
  { key: 'lifterMassKg', value: '180', reason: 'plate' },
  { key: 'lifterCentreMm', value: '200', reason: 'plate' },
  { key: 'liftHeightM', value: '8.2', reason: 'drawing' },
];

/** The sizes that the method asks of each kind, met. */
const SIZES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  panelLifter: { jawMinimumMm: '80', jawMaximumMm: '140', headBoreMm: '62' },
  ratchetStrap: { lengthM: '9' },
  safetyLine: { lengthM: '15' },
  spreaderBar: { lengthM: '3' },
  workPlatform: { platformHeightM: '8' },
};

let number = 0;

/** What the API takes for a new job of panel lifters. */
export function jobInput(storeId: number, day: (offset: number) => Day, differences: JobDifferences = {}) {
  number += 1;
  const {
    only = ['panelLifter'],
    lifters = 1,
    massKg = '478',
    from = 10,
    to = 20,
    otherStores = true,
  } = differences;
  return {
    reference: differences.reference ?? `J-${number}`,
    name: 'Marram Hall',
    site: 'East front',
    scheme: 'gb',
    method: 'tall-panel',
    storeId,
    loadOutDay: day(from),
    backDay: day(to),
    otherStores,
    counts: { crews: 1, liftersInUse: lifters, panelsOnWheels: 0, trucksUnloading: 0, personsAloft: 0 },
    panels: [
      {
        name: 'A1',
        heightMm: '7450',
        widthMm: '1210',
        thicknessMm: '112',
        massKg,
        packingKg: '22',
        count: 4,
      },
    ],
    parameters: PARAMETERS,
    adjustments: LINES.filter((key) => !only.includes(key)).map((lineKey) => ({
      lineKey,
      quantity: 0,
      reason: 'not in this test',
    })),
  };
}

/** Starts it on an empty database of the engine. */
export async function startGearYard(engine: Engine, other: Partial<Settings> = {}): Promise<GearYard> {
  const server = await startGearServer(engine, other);
  const today = server.app.get(Clock).today('Europe/London');
  const day = (offset: number) => addDays(today, offset);
  const far = { name: 'Far yard', address: '2 Quay', scheme: 'gb', timeZone: 'Europe/London' };
  const { body } = await server.manager.post('/api/stores').send(far).expect(201);
  return {
    ...server,
    farStoreId: body.id,
    day,
    async gear(tag, { kind = 'panelLifter', rating = ['500', 'kg'], examinedDaysAgo = 10, ...rest } = {}) {
      const measure = kind === 'ratchetStrap' ? 'lashingCapacity' : 'workingLoadLimit';
      const [value, unit] = rating;
      const item = await server.newItem({
        tag,
        kind,
        markings: [{ measure, value, unit }],
        dimensions: SIZES[kind] ?? {},
        ...rest,
      });
      if (examinedDaysAgo === null) return item;
      const type = kind === 'ratchetStrap' ? 'interimInspection' : 'thoroughExamination';
      const inspection = { type, doneOn: day(-examinedDaysAgo), outcome: 'fit', reportNumber: `R-${tag}` };
      await server.examiner.post(`/api/items/${item.id}/inspections`).send(inspection).expect(201);
      return item;
    },
    async job(differences) {
      const made = await server.storeman
        .post('/api/jobs')
        .send(jobInput(server.storeId, day, differences))
        .expect(201);
      return made.body.id;
    },
  };
}
