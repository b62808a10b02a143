import type { LiftedPanel } from '../../src/rules/calculations/calculation.js';
import { Exact } from '../../src/rules/quantities/exact.js';

/** A panel as the calculations of a lift see it, of 6 m and 400 kg packed unless it is said otherwise. */
export function liftedPanel(
  name: string,
  { heightM = '6', packedKg = '400', centreOffsetM = '0' } = {},
): LiftedPanel {
  return {
    name,
    heightM: Exact.of(heightM),
    widthM: Exact.of('1.2'),
    thicknessM: Exact.of('0.1'),
    massKg: Exact.of(packedKg),
    packedKg: Exact.of(packedKg),
    centreOffsetM: Exact.of(centreOffsetM),
    count: 1,
  };
}
