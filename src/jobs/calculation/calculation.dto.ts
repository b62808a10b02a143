import { ApiProperty } from '@nestjs/swagger';
import { CalculationProblemView, WorkingView } from '../../http/rule-views.dto.js';
import { GearLineView } from '../../planner/planner.dto.js';
import { CALCULATIONS, type CalculationKey } from '../../rules/calculations/parameter.js';
import type { SheetFigure, SheetSection, SheetSpacing } from './calculation-sheet.js';

/** That the job states a figure for itself. */
export class StatedFigureView {
  readonly reason!: string;
  @ApiProperty({ type: String, nullable: true })
  readonly methodValue!: string | null;
}

/** A figure that the sheet starts from. */
export class SheetFigureView implements SheetFigure {
  readonly key!: string;
  readonly label!: string;
  readonly unit!: string;
  /** Exact decimal text; null while it is not stated. */
  @ApiProperty({ type: String, nullable: true })
  readonly value!: string | null;
  readonly source!: string;
  readonly caution?: string;
  readonly stated?: StatedFigureView;
}

/** One part of the sheet. */
export class SheetSectionView implements SheetSection {
  @ApiProperty({ enum: CALCULATIONS })
  readonly calculation!: CalculationKey;
  @ApiProperty({ type: [SheetFigureView] })
  readonly figures!: readonly SheetFigureView[];
  @ApiProperty({ type: [WorkingView] })
  readonly workings!: readonly WorkingView[];
  @ApiProperty({ type: [CalculationProblemView] })
  readonly problems!: readonly CalculationProblemView[];
}

/** Where the trolleys of a panel go. */
export class SheetSpacingView implements SheetSpacing {
  readonly panel!: string;
  readonly spacingM!: string;
  readonly overhangM!: string;
}

/** All arithmetic of a job, step by step, with its sources. */
export class CalculationSheetView {
  readonly method!: string;
  readonly methodName!: string;
  /** The masses of the heaviest panels. */
  @ApiProperty({ type: [WorkingView] })
  readonly panels!: readonly WorkingView[];
  @ApiProperty({ type: [SheetSectionView] })
  readonly sections!: readonly SheetSectionView[];
  @ApiProperty({ type: [SheetSpacingView] })
  readonly spacings!: readonly SheetSpacingView[];
  @ApiProperty({ type: [GearLineView] })
  readonly lines!: readonly GearLineView[];
}

/** A sheet that was kept when gear was reserved. */
export class KeptSheetView {
  readonly id!: number;
  readonly keptAt!: string;
  /** SHA-256 of the sheet as canonical JSON (RFC 8785). */
  readonly fingerprint!: string;
}

/** The calculation of a job as it stands, and the numbers of those that were kept. */
export class JobCalculationView {
  readonly sheet!: CalculationSheetView;
  @ApiProperty({ type: [KeptSheetView] })
  readonly kept!: readonly KeptSheetView[];
}

/** A kept sheet in full. */
export class KeptCalculationView {
  readonly keptAt!: string;
  readonly fingerprint!: string;
  readonly sheet!: CalculationSheetView;
}
