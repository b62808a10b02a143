import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsBoolean, IsIn, IsInt, Max, Min, ValidateNested } from 'class-validator';
import { DayText } from '../http/day-text.js';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { DANGERS, OCCASIONS, type Danger, type Occasion } from '../rules/examination/report.js';
import { AffectedJobView, OUTCOMES, type Outcome } from './inspections.dto.js';
import { ItemView } from '../register/register.dto.js';

const RECORD_NUMBER = { message: 'name the record by its number' };
const NAME = { most: 160, what: 'the name' };
const ADDRESS = { most: 300, what: 'the address', lines: true };

/** A part with a defect that is or could become a danger to persons. */
export class ReportedDefectDto {
  @MayBeLeftOut()
  @PlainText({ most: 100, what: 'the part' })
  part?: string;

  @MayBeLeftOut()
  @PlainText({ most: 250, what: 'what is wrong with it', lines: true })
  description?: string;

  /** `is`: a danger now. `couldBecome`: a danger after the day `by` unless it is put right. */
  @MayBeLeftOut()
  @IsIn(DANGERS, { message: `choose from ${DANGERS.join(', ')}` })
  danger?: Danger;

  /** The last day of use, for what could become a danger. */
  @MayBeLeftOut()
  @DayText()
  by?: string;

  @MayBeLeftOut()
  @PlainText({ most: 250, what: 'the repair, renewal or alteration', lines: true })
  remedy?: string;
}

/**
 * A report of thorough examination to sign. Every paragraph of LOLER 1998 Schedule 1 has its fields; what lacks is
 * refused by its paragraph. Examiner and signer are the account that signs, the day of the report is today.
 */
export class NewExaminationDto {
  @MayBeLeftOut()
  @PlainText(NAME)
  employerName?: string;

  @MayBeLeftOut()
  @PlainText(ADDRESS)
  employerAddress?: string;

  @MayBeLeftOut()
  @PlainText(ADDRESS)
  premisesAddress?: string;

  /** Names the tag or the serial number, so that the report cannot be taken for another item's. */
  @MayBeLeftOut()
  @PlainText({ most: 500, what: 'what identifies the item', lines: true })
  identification?: string;

  @MayBeLeftOut()
  @DayText()
  manufacturedOn?: string;

  @MayBeLeftOut()
  @IsBoolean()
  manufactureUnknown?: boolean;

  @MayBeLeftOut()
  @DayText()
  lastExaminedOn?: string;

  @MayBeLeftOut()
  @IsBoolean()
  noEarlierExamination?: boolean;

  /**
   * Why you do not go by the last examination that the register has: asked for where you name an earlier day than its,
   * or none. The report then says both.
   */
  @MayBeLeftOut()
  @PlainText({ most: 300, what: 'why you do not go by the record', lines: true })
  registerDoubt?: string;

  @MayBeLeftOut()
  @PlainText({ most: 300, what: 'the safe working load', lines: true })
  safeWorkingLoad?: string;

  @MayBeLeftOut()
  @IsBoolean()
  dependsOnConfiguration?: boolean;

  @MayBeLeftOut()
  @PlainText({ most: 300, what: 'the configuration', lines: true })
  configuration?: string;

  @MayBeLeftOut()
  @IsBoolean()
  firstAfterInstallation?: boolean;

  @MayBeLeftOut()
  @IsBoolean()
  installedCorrectly?: boolean;

  /** What called for the examination, where it is not the first after installation. */
  @MayBeLeftOut()
  @IsIn(OCCASIONS, { message: `choose from ${OCCASIONS.join(', ')}` })
  occasion?: Occasion;

  /** False puts the item in quarantine at once. */
  @MayBeLeftOut()
  @IsBoolean()
  safeToOperate?: boolean;

  @MayBeLeftOut()
  @IsArray()
  @ArrayMaxSize(40)
  @ValidateNested({ each: true })
  @Type(() => ReportedDefectDto)
  defects?: ReportedDefectDto[];

  @MayBeLeftOut()
  @IsBoolean()
  noDefect?: boolean;

  /** The latest day for the next one. Left out, the latest that the rules allow is taken; it may only be earlier. */
  @MayBeLeftOut()
  @DayText()
  nextExaminationBy?: string;

  @MayBeLeftOut()
  @PlainText({ most: 1000, what: 'the particulars of the tests', lines: true })
  tests?: string;

  @MayBeLeftOut()
  @IsBoolean()
  noTest?: boolean;

  @MayBeLeftOut()
  @DayText()
  examinedOn?: string;

  @MayBeLeftOut()
  @PlainText(ADDRESS)
  examinerAddress?: string;

  @MayBeLeftOut()
  @PlainText({ most: 300, what: 'the qualifications', lines: true })
  examinerQualifications?: string;

  @MayBeLeftOut()
  @IsBoolean()
  selfEmployed?: boolean;

  @MayBeLeftOut()
  @PlainText(NAME)
  examinerEmployerName?: string;

  @MayBeLeftOut()
  @PlainText(ADDRESS)
  examinerEmployerAddress?: string;

  /** The address of the one who signs; the examiner's when left out. */
  @MayBeLeftOut()
  @PlainText(ADDRESS)
  signerAddress?: string;

  /** The record of the item that this report corrects, by its number: your own only. */
  @MayBeLeftOut()
  @IsInt(RECORD_NUMBER)
  @Min(1, RECORD_NUMBER)
  @Max(2_147_483_647, RECORD_NUMBER)
  supersedesId?: number;

  /** With an item found safe: ends quarantine or repair and closes the defects that were open before. */
  @MayBeLeftOut()
  @IsBoolean()
  release?: boolean;

  /** True to sign: that you examined the item yourself and that the report says what you found. */
  @MayBeLeftOut()
  @IsBoolean()
  declared?: boolean;
}

/** A defect as the report has it. */
export class ReportedDefectView {
  part!: string;
  description!: string;
  @ApiProperty({ enum: DANGERS })
  danger!: Danger;
  by?: string;
  remedy!: string;
}

/** A name with an address. */
export class AddressView {
  name!: string;
  address!: string;
}

/** Who examined, and for whom they work. */
export class ReportedExaminerView extends AddressView {
  qualifications!: string;
  /** Null of an examiner who is self-employed. */
  @ApiProperty({ type: AddressView, nullable: true })
  employer!: AddressView | null;
}

/** What called for the examination: installation, or one of the other occasions. */
export class ReportedOccasionView {
  firstAfterInstallation!: boolean;
  installedCorrectly?: boolean;
  @ApiProperty({ enum: OCCASIONS, required: false })
  occasion?: Occasion;
}

/** A thorough examination that the register has and the examiner does not go by. */
export class RegisterDoubtView {
  on!: string;
  /** The number of its record. */
  record!: number;
  why!: string;
}

/** The particulars of a report. */
export class ReportParticularsView {
  employerName!: string;
  employerAddress!: string;
  premisesAddress!: string;
  identification!: string;
  manufacturedOn!: string | null;
  lastExaminedOn!: string | null;
  /** Only where the examiner does not go by the last examination that the register has. */
  @ApiProperty({ type: RegisterDoubtView, required: false })
  registerDoubt?: RegisterDoubtView;
  safeWorkingLoad!: string;
  configuration!: string | null;
  occasion!: ReportedOccasionView;
  safeToOperate!: boolean;
  @ApiProperty({ type: [ReportedDefectView] })
  defects!: readonly ReportedDefectView[];
  nextExaminationBy!: string;
  tests!: string | null;
  examinedOn!: string;
  examiner!: ReportedExaminerView;
  signer!: AddressView;
  reportedOn!: string;
}

/** A report by its number and its row. */
export class ReportLinkView {
  id!: number;
  number!: string;
}

/** A report of thorough examination as signed. */
export class ExaminationView {
  id!: number;
  /** The number of the report, counted without a gap in each year. */
  number!: string;
  itemId!: number;
  /** The record among the inspections of the item. */
  inspectionId!: number;
  @ApiProperty({ enum: OUTCOMES })
  outcome!: Outcome;
  particulars!: ReportParticularsView;
  /** When it was signed. */
  madeAt!: string;
  /** SHA-256 over the report in canonical JSON (RFC 8785); the ledger keeps it too. */
  fingerprint!: string;
  /** True when what is kept still has the fingerprint that the ledger holds. */
  unaltered!: boolean;
  /** The record that it corrects. */
  supersedesInspectionId!: number | null;
  /** The report that it corrects, where that record was one. */
  @ApiProperty({ type: ReportLinkView, nullable: true })
  supersedes!: ReportLinkView | null;
  /** The report that corrects it: then this one counts no more. */
  @ApiProperty({ type: ReportLinkView, nullable: true })
  supersededBy!: ReportLinkView | null;
}

/** The report, the item after it, and the jobs that have to look for other gear because of it. */
export class ExaminationOutcomeView {
  examination!: ExaminationView;
  item!: ItemView;
  affectedJobs!: AffectedJobView[];
}
