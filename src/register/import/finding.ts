import type { QuantityRefusal } from '../../rules/quantities/parse-quantity.js';

/** What keeps a row out of the register. Codes are API. */
export type FaultCode =
  | Exclude<QuantityRefusal, 'blank'>
  | 'field_count'
  | 'blank_cell'
  | 'too_long'
  | 'damaged_number'
  | 'unknown_kind'
  | 'unknown_store'
  | 'unit_missing'
  | 'wrong_unit'
  | 'wrong_measure'
  | 'not_a_day'
  | 'ambiguous_date'
  | 'two_digit_year'
  | 'future_day'
  | 'not_yes_or_no'
  | 'not_in_service'
  | 'not_accepted'
  | 'duplicate_tag'
  | 'duplicate_serial'
  | 'serial_looks_alike'
  | 'tag_in_register'
  | 'serial_in_register'
  | 'looks_like_register';

/** What a storeman should know of a row that is taken nevertheless, or of the file. Codes are API. */
export type NoticeCode =
  | 'above_headings'
  | 'blank_rows'
  | 'total_row'
  | 'footer'
  | 'repeated_headings'
  | 'serial_unknown'
  | 'column_left_out'
  | 'kind_read_as'
  | 'unit_assumed'
  | 'length_converted'
  | 'mass_read_as_force'
  | 'length_not_kept'
  | 'rating_not_kept'
  | 'examination_not_kept'
  | 'never_examined'
  | 'reports_not_on_file'
  | 'maker_spelling'
  | 'note_to_look_into'
  | 'other_sheets'
  | 'panel_schedule';

/** Something found in a file: where, what the cell says, and the figures that the sentence about it needs. */
export interface Finding<Code> {
  /** As a spreadsheet numbers rows; absent when it is about the whole file. */
  readonly row?: number;
  /** The heading of the column; absent when it is about the whole row. */
  readonly column?: string;
  readonly cell?: string;
  readonly code: Code;
  /** A word that the sentence names: the kind meant, the units allowed, the other item's tag. */
  readonly subject?: string;
  /** The other rows concerned. */
  readonly rows?: readonly number[];
}

export type Fault = Finding<FaultCode> & { readonly row: number };
export type Notice = Finding<NoticeCode>;
