import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsIn, ValidateNested } from 'class-validator';
import { DecimalText } from '../http/decimal-text.js';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { CHART_RANGES, type ChartFigure } from '../rules/hosting/check-chart.js';

const BASES = ['loadCentre', 'reach'] as const;
const COVERS = ['plate', 'makersLetter'] as const;
const MOST_POINTS = 200;

/** The decorator of a figure of a chart, within the range that is believed of it. */
function Figure(figure: ChartFigure, what: string): PropertyDecorator {
  const { least, most } = CHART_RANGES[figure];
  return DecimalText({ atLeast: least, atMost: most, what });
}

/** One stated capacity of a load chart. */
export class ChartPointDto {
  @Figure('heightMm', 'the lift height in mm')
  heightMm!: string;

  /** The load centre or the reach, as the chart goes by. */
  @Figure('distanceMm', 'the load centre or reach in mm')
  distanceMm!: string;

  @Figure('capacityKg', 'the capacity in kg')
  capacityKg!: string;
}

/** What covers the lifter as an attachment of the machine. */
export class AttachmentCoverDto {
  @IsIn(COVERS, { message: 'choose the plate (plate) or a letter of the maker (makersLetter)' })
  by!: (typeof COVERS)[number];

  /** What the plate or the letter is found by. */
  @PlainText({ most: 120, what: 'what the plate or the letter is found by' })
  reference!: string;
}

/** What a host machine carries at which height and distance, as its maker states it. */
export class LoadChartDto {
  /** Load centres from the fork face (fork trucks), or reaches from the front of the machine (telescopic handlers). */
  @IsIn(BASES, { message: 'choose load centres (loadCentre) or reaches (reach)' })
  distanceBasis!: (typeof BASES)[number];

  /** In the order of height, then of distance. */
  @IsArray({ message: 'write the points as a list' })
  @ArrayMaxSize(MOST_POINTS, { message: `write at most ${MOST_POINTS} points` })
  @ValidateNested({ each: true, message: 'write each point as its height, distance and capacity' })
  @Type(() => ChartPointDto)
  @ApiProperty({ type: [ChartPointDto] })
  points!: readonly ChartPointDto[];

  /** From the front axle to the fork face; needed for load centres. */
  @MayBeLeftOut()
  @Figure('axleToForkFaceMm', 'the distance from front axle to fork face in mm')
  axleToForkFaceMm?: string;

  /** From the front axle to the face of the carriage; needed for load centres. */
  @MayBeLeftOut()
  @Figure('axleToCarriageMm', 'the distance from front axle to carriage face in mm')
  axleToCarriageMm?: string;

  @MayBeLeftOut()
  @ValidateNested({ message: 'write what covers the lifter, and its reference' })
  @Type(() => AttachmentCoverDto)
  attachmentCover?: AttachmentCoverDto;
}
