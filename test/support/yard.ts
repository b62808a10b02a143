import { addDays, addMonths, type Day } from '../../src/rules/calendar/day.js';
import type { Gear } from '../../src/rules/gear/gear.js';
import type { KindDefinition } from '../../src/rules/gear/kind.js';
import { seededRandom } from './seeded-random.js';

const RATINGS: Readonly<Record<string, readonly string[]>> = {
  kg: ['450', '600', '800', '1500', '2500'],
  daN: ['1500', '2500', '5000'],
  persons: ['2', '3'],
};

/** So many items of every kind in two stores, four in five of them in date: the same ones for the same number. */
export function yardOf(
  items: number,
  { kinds, today }: { kinds: readonly KindDefinition[]; today: Day },
): Gear[] {
  const random = seededRandom(items);
  return Array.from({ length: items }, (_, index) => {
    const kind = kinds[index % kinds.length];
    if (!kind) throw new Error('no kinds');
    const unit = kind.rating?.units[0];
    const ratings = RATINGS[unit ?? ''] ?? [];
    const value = ratings[random.whole(0, ratings.length - 1)];
    const examined = addDays(today, -random.whole(1, 200));
    const storeId = random.whole(1, 2);
    return {
      itemId: index + 1,
      tag: `${kind.tagPrefix}-${index + 1}`,
      kind: kind.kind,
      storeId,
      storeName: `Store ${storeId}`,
      condition: 'inService',
      missing: false,
      serialKnown: true,
      labelLegible: true,
      certificateOnFile: true,
      markings: kind.rating && unit && value ? [{ measure: kind.rating.measure, value, unit }] : [],
      dimensions: { lengthM: '10', barDiameterMm: '60' },
      manufacturedOn: addMonths(today, -24),
      firstUsedOn: addMonths(today, -20),
      inspections: (['thoroughExamination', 'interimInspection'] as const).map((type) => ({
        type,
        doneOn: examined,
        outcome: 'fit' as const,
      })),
      events: [],
      writtenSchemes: [],
      commitments: [],
    };
  });
}
