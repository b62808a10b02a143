import { hostLoad } from '../hosting/host-load.js';
import type { HostingNeed } from '../hosting/hosting-need.js';
import { lifter } from '../lifting/lifter.js';
import { platformHeight } from '../platform/platform-height.js';
import type { Exact } from '../quantities/exact.js';
import { safetyLines } from '../steadying/safety-lines.js';
import { straps } from '../strapping/straps.js';
import { trolleySupports, type PanelSupports } from '../supports/trolley-supports.js';
import { spreaderBar } from '../unloading/spreader-bar.js';
import type { Calculated, LiftedPanel } from './calculation.js';
import type { LiftFigure } from './lift-figure.js';
import { parametersOf, type CalculationKey, type ParameterKey } from './parameter.js';

/** What one calculation adds to the sheet of a lift. */
export interface LiftPart {
  readonly figures: Readonly<Partial<Record<LiftFigure, Exact>>>;
  readonly hosting?: HostingNeed;
  readonly spacings?: readonly PanelSupports[];
}

/** Gives a figure of the job; `optional` where the calculation can do without. */
export interface Known {
  readonly of: (key: ParameterKey) => Exact;
  readonly optional: (key: ParameterKey) => Exact | undefined;
}

/** One calculation: the figures of the job that it uses, and how it is done. */
export interface Calculation {
  readonly uses: readonly ParameterKey[];
  readonly calculate: (panels: readonly LiftedPanel[], known: Known) => Calculated<LiftPart>;
}

/** The calculations of a lift. The programme of the work is not among them: it needs days, and rates no gear. */
export const LIFT_CALCULATIONS: Readonly<Record<Exclude<CalculationKey, 'programme'>, Calculation>> = {
  lifting: {
    uses: ['handlingFactor', 'barDiameterMm'],
    calculate: (panels, { of }) => asPart(lifter({ panels, handlingFactor: of('handlingFactor') })),
  },
  unloading: {
    uses: ['handlingFactor', 'spreaderBarMassKg', 'dropSpacingM', 'topLegLengthM', 'leastLegAngleDeg'],
    calculate: (panels, { of }) =>
      asPart(
        spreaderBar({
          panels,
          handlingFactor: of('handlingFactor'),
          spreaderBarMassKg: of('spreaderBarMassKg'),
          dropSpacingM: of('dropSpacingM'),
          topLegLengthM: of('topLegLengthM'),
          leastLegAngleDeg: of('leastLegAngleDeg').toString(),
        }),
      ),
  },
  strapping: {
    uses: ['lifterDepthM', 'strapTailM', 'sidewaysShare'],
    calculate: (panels, { of }) =>
      asPart(
        straps({
          panels,
          lifterDepthM: of('lifterDepthM'),
          strapTailM: of('strapTailM'),
          sidewaysShare: of('sidewaysShare'),
        }),
      ),
  },
  supports: {
    uses: ['leastSpacingM', 'spacingM', 'greatestOverhangShare', 'castorsPerTrolley', 'floorPointLimitKg'],
    calculate: (panels, { of, optional }) => {
      const spacingM = optional('spacingM');
      const floorPointLimitKg = optional('floorPointLimitKg');
      const supports = trolleySupports({
        panels,
        leastSpacingM: of('leastSpacingM'),
        greatestOverhangShare: of('greatestOverhangShare'),
        castorsPerTrolley: of('castorsPerTrolley'),
        ...(spacingM && { spacingM }),
        ...(floorPointLimitKg && { floorPointLimitKg }),
      });
      if (!supports.ok) return supports;
      const { trolleyLoadKg, perPanel } = supports.figures;
      return { ...supports, figures: { figures: { trolleyLoadKg }, spacings: perPanel } };
    },
  },
  hosting: {
    uses: [
      'handlingFactor',
      'lifterDepthM',
      'lifterMassKg',
      'riggingMassKg',
      'lifterCentreMm',
      'liftHeightM',
      'machineReachM',
    ],
    calculate: (panels, { of, optional }) => {
      const machineReachM = optional('machineReachM');
      const host = hostLoad({
        panels,
        handlingFactor: of('handlingFactor'),
        lifterMassKg: of('lifterMassKg'),
        riggingMassKg: of('riggingMassKg'),
        lifterCentreMm: of('lifterCentreMm'),
        lifterDepthM: of('lifterDepthM'),
        liftHeightM: of('liftHeightM'),
        ...(machineReachM && { machineReachM }),
      });
      if (!host.ok) return host;
      const { hostLoadKg, hosting } = host.figures;
      return { ...host, figures: { figures: { hostLoadKg }, hosting } };
    },
  },
  steadying: {
    uses: ['liftHeightM', 'standOffM'],
    calculate: (_panels, { of }) =>
      asPart(safetyLines({ liftHeightM: of('liftHeightM'), standOffM: of('standOffM') })),
  },
  platform: {
    uses: ['platformReachM'],
    calculate: (panels, { of }) => asPart(platformHeight({ panels, platformReachM: of('platformReachM') })),
  },
};

function asPart(result: Calculated<LiftPart['figures']>): Calculated<LiftPart> {
  return result.ok ? { ...result, figures: { figures: result.figures } } : result;
}

/** The figures of a job that a calculation uses. */
export function usedBy(calculation: CalculationKey): readonly ParameterKey[] {
  return calculation === 'programme' ? parametersOf('programme') : LIFT_CALCULATIONS[calculation].uses;
}
