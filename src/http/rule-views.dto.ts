import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
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
  /** The dimension or the type of inspection concerned. */
  readonly subject?: string;
  /** The day that decides: a due day, the back day of another job, the end of life. */
  @ApiPropertyOptional({ type: String, format: 'date' })
  readonly on?: NonNullable<Refusal['on']>;
  readonly jobReference?: string;
  /** Key of a source; the page Rules lists them. */
  readonly source!: string;
}
