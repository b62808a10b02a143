import type { LiftedPanel } from '../calculations/calculation.js';
import { Exact } from '../quantities/exact.js';
import type { PanelLine } from './panel-line.js';
import { panelMass, type EstimateMargin } from './panel-mass.js';

const METRES_PER_MM = Exact.of('0.001');

/**
 * The panels of a schedule as the calculations of a lift see them, in its order. A centre of gravity that is not
 * stated is taken in the middle of the height, as the working of the panel's mass warns.
 * @throws RangeError when `checkSchedule` refuses a figure of a line.
 */
export function liftedPanels(panels: readonly PanelLine[], margin: EstimateMargin): readonly LiftedPanel[] {
  return panels.map((panel) => {
    const { massKg, packedKg } = panelMass(panel, margin);
    return {
      name: panel.name,
      heightM: inMetres(panel.heightMm),
      widthM: inMetres(panel.widthMm),
      thicknessM: inMetres(panel.thicknessMm),
      massKg,
      packedKg,
      centreOffsetM: inMetres(panel.centreOffsetMm ?? '0'),
      count: panel.count,
    };
  });
}

function inMetres(mm: string): Exact {
  return Exact.of(mm).times(METRES_PER_MM);
}
