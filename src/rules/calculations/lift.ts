import type { HostingNeed } from '../hosting/hosting-need.js';
import type { PanelSupports } from '../supports/trolley-supports.js';
import type { Working } from '../working.js';
import type { Calculated, CalculationProblem, LiftedPanel } from './calculation.js';
import { LIFT_CALCULATIONS, type Calculation, type LiftPart } from './calculations.js';
import { figuresOf, type JobParameter } from './job-parameters.js';
import { CALCULATIONS, type CalculationKey } from './parameter.js';

/** What the calculations of one job start from. */
export interface LiftInput {
  readonly panels: readonly LiftedPanel[];
  readonly parameters: readonly JobParameter[];
  /** The calculations that the method asks for. */
  readonly calculations: readonly CalculationKey[];
}

/** One part of the calculation sheet: its steps, or what keeps it from being worked out. */
export interface LiftSection {
  readonly calculation: CalculationKey;
  readonly workings: readonly Working[];
  readonly problems: readonly CalculationProblem[];
}

/** The arithmetic of a lift: the sheet in order, and every figure that came out of it. */
export interface Lift {
  readonly sections: readonly LiftSection[];
  readonly figures: LiftPart['figures'];
  /** What the host machine must do; absent while it could not be worked out. */
  readonly hosting?: HostingNeed;
  /** How far apart the trolleys of each panel go. */
  readonly spacings: readonly PanelSupports[];
}

/**
 * Works out everything that a method asks of a lift, apart from the programme of the work. A part that lacks a figure,
 * or whose geometry cannot be, comes out with its problems and without figures: gear that depends on it is refused.
 */
export function liftCalculation({ panels, parameters, calculations }: LiftInput): Lift {
  const asked = CALCULATIONS.filter((key) => key !== 'programme').filter((key) => calculations.includes(key));
  const parts = asked.map((calculation) => ({
    calculation,
    result: calculatePart(LIFT_CALCULATIONS[calculation], panels, parameters),
  }));
  const done = parts.flatMap(({ result }) => (result.ok ? [result.figures] : []));
  const hosting = done.find((part) => part.hosting)?.hosting;
  return {
    sections: parts.map(({ calculation, result }) => ({
      calculation,
      workings: result.ok ? result.workings : [],
      problems: result.ok ? [] : result.problems,
    })),
    figures: done.reduce<LiftPart['figures']>((all, { figures }) => ({ ...all, ...figures }), {}),
    ...(hosting && { hosting }),
    spacings: done.flatMap(({ spacings = [] }) => spacings),
  };
}

function calculatePart(
  { uses, calculate }: Calculation,
  panels: readonly LiftedPanel[],
  parameters: readonly JobParameter[],
): Calculated<LiftPart> {
  const known = figuresOf(parameters, uses);
  return known.ok ? calculate(panels, known) : known;
}
