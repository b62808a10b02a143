import type { NewJobDto } from '../jobs/jobs.dto.js';
import { addDays, type Day } from '../rules/calendar/day.js';

/** The four jobs of the demo scenario, relative to today: `past` is over, `away` is out now, the other two are to be planned. */
export function demoJobs(
  today: Day,
  stores: readonly [number, number],
): Record<'past' | 'away' | 'canBeMet' | 'short', NewJobDto> {
  const common = { scheme: 'gb', method: 'tall-panel', storeId: stores[0], otherStores: true };
  return {
    past: {
      ...common,
      reference: 'LM-2036',
      name: 'Curlew House, assembly room',
      site: 'Curlew House, Tern Walk, Larkmoor',
      loadOutDay: addDays(today, -21),
      backDay: addDays(today, -14),
      counts: counts(1, 4),
      panels: [
        panel('C1', { heightMm: '6200', massKg: '342', count: 16 }),
        panel('C2 door', { heightMm: '6200', massKg: '381', count: 2 }),
      ],
    },
    away: {
      ...common,
      reference: 'LM-2042',
      name: 'Plover Pavilion, two halls',
      site: 'Plover Pavilion, Saltgate, Larkmoor',
      loadOutDay: addDays(today, -2),
      backDay: addDays(today, 8),
      counts: counts(2, 6),
      panels: [
        panel('P1', { heightMm: '7100', massKg: '455', count: 24 }),
        panel('P2 jamb', { heightMm: '7100', massKg: '248', count: 4 }),
      ],
    },
    canBeMet: {
      ...common,
      reference: 'LM-2047',
      name: 'Marram Hall, north wall',
      site: 'Marram Hall, Dune Road, Larkmoor',
      loadOutDay: addDays(today, 6),
      backDay: addDays(today, 13),
      counts: counts(1, 4),
      panels: [
        panel('A1', { heightMm: '7450', massKg: '478', count: 14 }),
        panel('A2', { heightMm: '7450', arealMassKgPerM2: '48', count: 10 }),
        panel('A3 jamb', { heightMm: '7450', arealMassKgPerM2: '48', widthMm: '640', count: 2 }),
      ],
    },
    short: {
      ...common,
      reference: 'LM-2051',
      name: 'Sedge Arena, four bays at once',
      site: 'Sedge Arena, Reed Street, Ashby Fell',
      storeId: stores[1],
      loadOutDay: addDays(today, 16),
      backDay: addDays(today, 30),
      counts: counts(4, 14),
      panels: [panel('S1', { heightMm: '9100', widthMm: '1230', massKg: '715', count: 40 })],
    },
  };
}

function counts(crews: number, panelsOnWheels: number) {
  return { crews, liftersInUse: crews, panelsOnWheels, trucksUnloading: 1, personsAloft: crews * 2 };
}

function panel(
  name: string,
  row: { heightMm: string; count: number; widthMm?: string; massKg?: string; arealMassKgPerM2?: string },
): NewJobDto['panels'][number] {
  return { name, widthMm: '1210', thicknessMm: '112', packingKg: '22', ...row };
}
