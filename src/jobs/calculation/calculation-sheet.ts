import type { Catalogue } from '../../catalogue/catalogue.js';
import type { CalculationProblem } from '../../rules/calculations/calculation.js';
import { jobParameters, type JobParameter } from '../../rules/calculations/job-parameters.js';
import { PARAMETERS, type CalculationKey } from '../../rules/calculations/parameter.js';
import type { GearLine } from '../../rules/lines/need.js';
import { Exact } from '../../rules/quantities/exact.js';
import type { Programme } from '../../rules/programme/programme-figures.js';
import type { Working } from '../../rules/working.js';
import { requireLines, type LineFacts } from '../job-lines.js';
import { jobProgramme, type ProgrammeFacts } from './job-programme.js';

/** A figure that the sheet starts from, with the method's own where the job states another. */
export interface SheetFigure {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  /** Null while it is not stated. */
  readonly value: string | null;
  readonly source: string;
  readonly caution?: string;
  readonly stated?: { readonly reason: string; readonly methodValue: string | null };
}

/** One part of the sheet: the figures it starts from, its steps, and what keeps it from being worked out. */
export interface SheetSection {
  readonly calculation: CalculationKey;
  readonly figures: readonly SheetFigure[];
  readonly workings: readonly Working[];
  readonly problems: readonly CalculationProblem[];
}

/** Where the trolleys of a panel go, in m. */
export interface SheetSpacing {
  readonly panel: string;
  readonly spacingM: string;
  readonly overhangM: string;
}

/** All arithmetic of a job as plain data: what is shown, printed and kept with a booking. */
export interface CalculationSheet {
  readonly method: string;
  readonly methodName: string;
  readonly panels: readonly Working[];
  readonly sections: readonly SheetSection[];
  readonly spacings: readonly SheetSpacing[];
  readonly lines: readonly GearLine[];
}

/** The sheet of a job as it stands, with its programme where the method works one out and it can be. */
export function calculationSheet(
  job: LineFacts & ProgrammeFacts,
  catalogue: Catalogue,
): { sheet: CalculationSheet; programme?: Programme } {
  const method = catalogue.method(job.method);
  const { lines, ruling, lift } = requireLines(job, catalogue);
  const programme = jobProgramme(job, method);
  const parameters = jobParameters(method, job.parameters);
  const work = programme && {
    calculation: 'programme' as const,
    workings: programme.ok ? programme.workings : [],
    problems: programme.ok ? programme.figures.notices : programme.problems,
  };
  return {
    sheet: {
      method: method.method,
      methodName: method.name,
      panels: ruling.workings,
      sections: [...lift.sections, ...(work ? [work] : [])].map((section) => ({
        ...section,
        figures: parameters
          .filter(({ key }) => PARAMETERS[key].group === section.calculation)
          .map(sheetFigure),
      })),
      spacings: lift.spacings.map(({ name, spacingM, overhangM }) => ({
        panel: name,
        spacingM: spacingM.toString(),
        overhangM: overhangM.toString(),
      })),
      lines,
    },
    ...(programme?.ok && { programme: programme.figures }),
  };
}

function sheetFigure({ key, label, value, source, caution, stated }: JobParameter): SheetFigure {
  return {
    key,
    label,
    unit: PARAMETERS[key].unit,
    value: value === null ? null : Exact.of(value).toString(),
    source: source.key,
    ...(caution !== undefined && { caution }),
    ...(stated && { stated }),
  };
}
