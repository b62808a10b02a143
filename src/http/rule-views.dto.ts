import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import {
  CALCULATION_PROBLEM_CODES,
  type CalculationProblem,
  type CalculationProblemCode,
} from '../rules/calculations/calculation.js';
import { REFUSAL_CODES, type Refusal } from '../rules/fitness/refusal.js';
import type { Figure, Working } from '../rules/working.js';

/** What rules answer, described for the API. The classes have the shape of the rule types they implement. */

/** One number of a working. */
export class FigureView implements Figure {
  readonly name!: string;
  /** Exact decimal text, or a day. */
  readonly value!: string;
  /** The unit's symbol; empty for a bare number. */
  readonly unit!: string;
}

/** One step of arithmetic: what went in, how, what came out, and the source of the rule. */
export class WorkingView implements Working {
  readonly title!: string;
  readonly formula!: string;
  @ApiProperty({ type: [FigureView] })
  readonly inputs!: readonly FigureView[];
  readonly result!: FigureView;
  /** Key of a source; the page Rules lists them. */
  readonly source!: string;
  readonly caution?: string;
}

/** One reason why an item is refused. Which of the figures are present depends on the code. */
export class RefusalView implements Refusal {
  @ApiProperty({ enum: REFUSAL_CODES })
  readonly code!: Refusal['code'];
  /** What was needed, as exact decimal text in `unit`. */
  readonly needed?: string;
  /** What the item has. */
  readonly has?: string;
  readonly unit?: string;
  /** The dimension, the type of inspection or the end of a hire concerned. */
  readonly subject?: string;
  /** The day that decides: a due day, the back day of another job, the end of life or of a hire. */
  @ApiPropertyOptional({ type: String, format: 'date' })
  readonly on?: NonNullable<Refusal['on']>;
  readonly jobReference?: string;
  /** Key of a source; the page Rules lists them. */
  readonly source!: string;
}

/** What keeps a part of the sheet from being worked out, or must be said of it. */
export class CalculationProblemView implements CalculationProblem {
  @ApiProperty({ enum: CALCULATION_PROBLEM_CODES })
  readonly code!: CalculationProblemCode;
  /** The figure, the panel or the truck concerned. */
  readonly subject?: string;
  readonly needed?: string;
  readonly has?: string;
  readonly unit?: string;
}
