import { Type } from 'class-transformer';
import { IsIn, IsInt, Max, Min } from 'class-validator';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { DOCUMENT_KINDS, type DocumentKind } from './document-kind.js';

const LARGEST_ID = 2_147_483_647;

/** The fields that go with a file. */
export class NewDocumentDto {
  @IsIn(DOCUMENT_KINDS, { message: `choose from ${DOCUMENT_KINDS.join(', ')}` })
  kind!: DocumentKind;

  /** The record of inspection it belongs to. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'name the inspection by its number' })
  @Min(1)
  @Max(LARGEST_ID)
  inspectionId?: number;

  /** The defect it shows. */
  @MayBeLeftOut()
  @Type(() => Number)
  @IsInt({ message: 'name the defect by its number' })
  @Min(1)
  @Max(LARGEST_ID)
  defectId?: number;
}

/** A photo or a certificate. Its bytes are at `/documents/{id}`. */
export class DocumentView {
  id!: number;
  /** photo or certificate. */
  kind!: DocumentKind;
  /** The name that the sender's file had. */
  name!: string;
  mediaType!: string;
  sizeBytes!: number;
  /** SHA-256 of the bytes, in hexadecimal. */
  sha256!: string;
  itemId!: number;
  inspectionId!: number | null;
  defectId!: number | null;
  /** Who added it; null for Tackleroom itself. */
  keptBy!: string | null;
  keptAt!: string;
}
