import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsString,
  Length,
  Matches,
  Max,
  MaxLength,
  Min,
  ValidateNested,
} from 'class-validator';
import { MayBeLeftOut } from '../../http/may-be-left-out.js';

const DATE_ORDERS = ['dayFirst', 'monthFirst', 'unknown'] as const;
const DECIMAL_MARKS = ['point', 'comma', 'unknown'] as const;
const LENGTH_UNITS = ['m', 'mm', 'cm', 'ft', 'in'] as const;
const MASS_UNITS = ['kg', 't', 'lb'] as const;
const FORCE_UNITS = ['daN', 'kN', 'kgf', 'lbf'] as const;

/** A word of the file and the kind it stands for. */
export class KindWordDto {
  /** As the report writes it. */
  @IsString()
  @MaxLength(200)
  word!: string;

  /** Key of a kind; left out, the word stays unknown. */
  @MayBeLeftOut()
  @IsString()
  @Length(1, 40)
  kind?: string;
}

/** A word of the file and the store it stands for. */
export class StoreWordDto {
  /** As the report writes it. */
  @IsString()
  @MaxLength(200)
  word!: string;

  /** Number of a store; left out, the word stays unknown. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt()
  @Min(1)
  @Max(1_000_000_000)
  storeId?: number;
}

/** How a file is to be read. What is left out is left to the file. */
export class ImportMappingDto {
  /** The field of each column, in the order of the file; an empty text leaves the column out. */
  @IsArray()
  @ArrayMaxSize(200)
  @Matches(/^(?:|[A-Za-z]{1,30}|size\.[A-Za-z]{1,40})$/, {
    each: true,
    message: 'write the name of a field, or nothing',
  })
  columns!: string[];

  /** Which number of a date such as 09/05/2026 is the day. */
  @MayBeLeftOut()
  @IsIn(DATE_ORDERS)
  dateOrder?: (typeof DATE_ORDERS)[number];

  /** What stands before the decimals. */
  @MayBeLeftOut()
  @IsIn(DECIMAL_MARKS)
  decimalMark?: (typeof DECIMAL_MARKS)[number];

  /** What plain numbers under a length are; left out, they are refused. */
  @MayBeLeftOut()
  @IsIn(LENGTH_UNITS)
  lengthUnit?: (typeof LENGTH_UNITS)[number];

  /** What plain numbers are that rate gear by mass; left out, they are refused. */
  @MayBeLeftOut()
  @IsIn(MASS_UNITS)
  massUnit?: (typeof MASS_UNITS)[number];

  /** What plain numbers are that rate straps by force; left out, they are refused. */
  @MayBeLeftOut()
  @IsIn(FORCE_UNITS)
  forceUnit?: (typeof FORCE_UNITS)[number];

  /** Words for kinds that the catalogue does not know. */
  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(500)
  @ValidateNested({ each: true })
  @Type(() => KindWordDto)
  kinds?: KindWordDto[];

  /** Words for stores that are not their names. */
  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(500)
  @ValidateNested({ each: true })
  @Type(() => StoreWordDto)
  stores?: StoreWordDto[];

  /** The store of rows that name none. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt()
  @Min(1)
  @Max(1_000_000_000)
  storeId?: number;

  /** Whether the reports of the examinations are on file. Unless they are, gear whose report must be is refused. */
  @MayBeLeftOut()
  @IsBoolean()
  reportsOnFile?: boolean;
}

/** What is to be taken. */
export class AcceptImportDto {
  /** `allOrNothing` takes all rows if all are sound, and else none; `soundRows` takes the sound ones. */
  @IsIn(['allOrNothing', 'soundRows'], { message: 'choose allOrNothing or soundRows' })
  mode!: 'allOrNothing' | 'soundRows';
}

/** Something found in a file. */
export class FindingView {
  /** As a spreadsheet numbers rows, from 1; absent when it is about the whole file. */
  row?: number;
  /** The heading of the column; absent when it is about the whole row. */
  column?: string;
  /** What the cell says. */
  cell?: string;
  code!: string;
  /** What it is, in a sentence. */
  sentence!: string;
}

/** Something that keeps a row out. */
export class FaultView extends FindingView {
  /** What to do about it. */
  remedy!: string;
}

/** How the rows of a file stand. */
export class ImportCountsView {
  /** Rows that are, or should be, items. */
  rows!: number;
  sound!: number;
  /** Rows that the register holds already. */
  unchanged!: number;
  faulty!: number;
  /** Blank rows, sums and repeated headings. */
  skipped!: number;
}

/** What a dry run found. Nothing is written to the register by it. */
export class ImportReportView {
  /** Names the file in what follows; it is kept for a day. */
  uploadId!: string;
  fileName!: string;
  headings!: string[];
  mapping!: ImportMappingDto;
  /** The order of dates and the decimal mark that the file was read by. */
  dateOrder!: string;
  decimalMark!: string;
  /** Fields that no column holds yet; until each has one, no row is checked. */
  missing!: string[];
  counts!: ImportCountsView;
  faults!: FaultView[];
  notices!: FindingView[];
}

/** What was taken. */
export class ImportOutcomeView {
  taken!: number;
  unchanged!: number;
  faulty!: number;
  skipped!: number;
  /** Where the faulty rows are to be had as a file to mend; absent when there are none. */
  mendFile?: string;
}
