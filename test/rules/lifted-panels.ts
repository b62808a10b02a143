import type { LiftedPanel } from '../../src/rules/calculations/calculation.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import type { SeededRandom } from '../support/seeded-random.js';

/** What a test says of a panel, as decimal text; the rest is usual. */
interface PanelWords {
  readonly name?: string;
  readonly heightM?: string;
  readonly widthM?: string;
  readonly thicknessM?: string;
  readonly massKg?: string;
}

/** A panel of a lift: 7.45 m by 1.21 m by 112 mm and 478 kg, unless the test says otherwise. */
export function liftedPanel({
  name = 'A1',
  heightM = '7.45',
  widthM = '1.21',
  thicknessM = '0.112',
  massKg = '478',
}: PanelWords = {}): LiftedPanel {
  const mass = Exact.of(massKg);
  return {
    name,
    heightM: Exact.of(heightM),
    widthM: Exact.of(widthM),
    thicknessM: Exact.of(thicknessM),
    massKg: mass,
    packedKg: mass.plus(Exact.of('22')),
    centreOffsetM: Exact.of('0'),
    count: 1,
  };
}

/** Up to six panels of any size and mass in the trade. */
export function somePanels(random: SeededRandom): LiftedPanel[] {
  const thousandths = (least: number, most: number) => String(random.whole(least, most) / 1000);
  return Array.from({ length: random.whole(1, 6) }, (_, index) =>
    liftedPanel({
      name: `P${index + 1}`,
      heightM: thousandths(3000, 12000),
      widthM: thousandths(400, 1500),
      thicknessM: thousandths(60, 160),
      massKg: thousandths(100_000, 900_000),
    }),
  );
}

/** The figures as plain numbers, and an error where there are problems. */
export function figuresOf<Key extends string>(
  result: { ok: true; figures: Readonly<Record<Key, Exact>> } | { ok: false; problems: unknown },
  key: NoInfer<Key>,
): number {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.figures[key].toNumber();
}
