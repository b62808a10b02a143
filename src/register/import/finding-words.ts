import { MEASURES } from '../../rules/quantities/marking.js';
import { MEASURE_NAMES } from '../../web/sentences/words.js';
import type { Fault, FaultCode, Notice, NoticeCode } from './finding.js';

/** What is wrong with a row, and what the storeman does about it. */
export interface FaultWords {
  readonly wrong: string;
  readonly remedy: string;
}

/** The two sentences about a fault. */
export function faultWords(fault: Fault): FaultWords {
  const [wrong, remedy] = FAULTS[fault.code](fault);
  return { wrong, remedy };
}

/** The sentence about a notice. */
export function noticeWords(notice: Notice): string {
  return NOTICES[notice.code](notice);
}

type Words = readonly [wrong: string, remedy: string];

const READ_PLATE = 'Read the plate or label and write the figure with its unit, such as 800 kg or 2500 daN.';

const FAULTS: Readonly<Record<FaultCode, (fault: Fault) => Words>> = {
  field_count: ({ subject }) => [
    `The row has another number of cells than the headings${subject ? ` (${subject})` : ''}, so some stand in the wrong column.`,
    'Look for a delimiter too many or too few; put quotation marks round a cell that holds one.',
  ],
  blank_cell: ({ column }) => [
    `${column ?? 'A cell'} is blank.`,
    'Fill it in from the item itself. An item whose plate cannot be read is entered by hand in the register, and is refused for every duty.',
  ],
  too_long: ({ subject }) => [`The cell is longer than ${subject ?? 'allowed'} characters.`, 'Shorten it.'],
  damaged_number: () => [
    'A spreadsheet has changed this mark into a rounded number.',
    'Read it from the plate again, and set the column to text before typing it.',
  ],
  unknown_kind: ({ subject }) => [
    `This is no kind of gear that Tackleroom knows.${subject ? ` Did you mean ${subject}?` : ''}`,
    'Mend the word, or say in the import which kind it stands for.',
  ],
  unknown_store: () => [
    'There is no store of that name.',
    'Say in the import which store it is. A new store is made on the page Stores, by a manager.',
  ],
  not_a_quantity: () => [
    'This is no figure with a unit.',
    `${READ_PLATE} An item whose rating cannot be read is not used.`,
  ],
  not_a_capacity: () => [
    'This is a tension or a breaking force, not what the item may be loaded with.',
    READ_PLATE,
  ],
  ambiguous_number: () => [
    'The figure can be read in two ways, or not as the other figures of the file are.',
    'Say in the import whether decimals are written with a point or a comma, or write the figure without grouping.',
  ],
  ambiguous_ton: () => [
    'A ton may be 1000 kg, 907 kg or 1016 kg.',
    'Read the plate and write t for 1000 kg, or the figure in kg or lb.',
  ],
  unknown_unit: () => ['The unit is not known.', 'Write one such as kg, t, lb, daN, kN, m or ft.'],
  unit_missing: () => [
    'The figure has no unit.',
    'Write the unit, or say in the import what plain numbers are.',
  ],
  wrong_unit: ({ subject }) => [
    `This is not marked in that unit; it would be in ${subject ?? 'another'}. A mass is no force, and neither is a length.`,
    'Read the label again and write the figure as it is marked.',
  ],
  wrong_measure: ({ subject }) => [
    `This kind is rated by its ${measureName(subject)}, and the cell states something else.`,
    READ_PLATE,
  ],
  negative: () => ['The figure is below zero.', READ_PLATE],
  zero: () => ['The figure is zero.', READ_PLATE],
  absurd: () => ['The figure is larger than any gear of a store.', READ_PLATE],
  formula: () => [
    'The cell holds a formula, and a formula is not what is stamped on the item.',
    'Write the figure or the text itself.',
  ],
  not_a_day: () => [
    'There is no such day, or it is not written as a day.',
    'Write it as year-month-day, such as 2026-05-09.',
  ],
  ambiguous_date: () => [
    'Day and month can be swapped, and the file does not tell which comes first.',
    'Say in the import which comes first, or write it as year-month-day.',
  ],
  two_digit_year: () => ['The year has two figures only.', 'Write it with four, such as 2026.'],
  future_day: ({ subject }) => [
    `The day is in the future${subject ? `: today is ${subject} at the store` : ''}.`,
    'Write the day it was done; a day that is planned is no examination.',
  ],
  not_yes_or_no: () => [
    'This is neither yes nor no.',
    'Write yes or no, or leave the column out of the import.',
  ],
  not_in_service: () => [
    'Only gear in service is taken from a file.',
    'Enter the item by hand, and set its condition there; or leave the column out of the import if it tells something else.',
  ],
  not_accepted: ({ subject }) => [
    `The register does not take it: ${subject ?? 'see the row'}.`,
    'Mend it and hand the file over again.',
  ],
  duplicate_tag: ({ rows }) => [
    `The same tag stands in ${rowList(rows)} too; nobody can tell which is right.`,
    'Look at the items, and give one of them its own tag.',
  ],
  duplicate_serial: ({ rows }) => [
    `The same maker and serial number stand in ${rowList(rows)} too.`,
    'Look at the items: it may be one item listed twice.',
  ],
  serial_looks_alike: ({ rows }) => [
    `The serial number is easily mistaken for the one in ${rowList(rows)}.`,
    'Read both plates again. If they are two items, enter them by hand, where you can say so.',
  ],
  tag_in_register: ({ subject }) => [
    `The tag is in the register already, with another ${subject ?? 'entry'}.`,
    'Change the item on its own page if the file is right. Nothing is overwritten from a file.',
  ],
  serial_in_register: ({ subject }) => [
    `The register has this maker and serial number as ${subject ?? 'another item'}.`,
    'It may be that item: look at it.',
  ],
  looks_like_register: ({ subject }) => [
    `The serial number is easily mistaken for the one of ${subject ?? 'another item'} in the register.`,
    'Read both plates again. If they are two items, enter this one by hand, where you can say so.',
  ],
};

const NOTICES: Readonly<Record<NoticeCode, (notice: Notice) => string>> = {
  above_headings: ({ rows }) => `Above the headings; left out: ${rowList(rows)}.`,
  blank_rows: ({ rows }) => `Nothing is written there; left out: ${rowList(rows)}.`,
  total_row: () => 'A line that sums up; left out.',
  footer: () => 'A line below the list; left out.',
  repeated_headings: () => 'The headings again; left out.',
  serial_unknown: () =>
    'The serial number is said to be unknown: the item is registered, and refused for every duty.',
  column_left_out: () => 'This column is left out.',
  kind_read_as: ({ cell, subject }) => `'${cell ?? ''}' is entered as ${subject ?? 'another kind'}.`,
  unit_assumed: ({ subject }) => `The cell names no unit; taken as ${subject ?? 'you said'}.`,
  mass_read_as_force: ({ subject }) =>
    `A lashing capacity is a force: taken as ${subject ?? 'kilograms-force'}. Look whether the label says daN.`,
  length_converted: ({ subject }) => `Taken as ${subject ?? 'metres'}, exactly.`,
  length_not_kept: ({ subject }) =>
    `No length is kept of a ${subject ?? 'kind like this'}; the cell is left out.`,
  rating_not_kept: ({ subject }) =>
    `A ${subject ?? 'kind like this'} carries no rating; the cell is left out.`,
  examination_not_kept: ({ subject }) =>
    `The rules of the store ask for no examination of a ${subject ?? 'kind like this'}; the day is left out.`,
  never_examined: () => 'No day of examination: it counts as never examined, and is refused until it is.',
  reports_not_on_file: () =>
    'You did not say that the reports of the examinations are on file. Gear whose report must be on file is refused until you say so on its page.',
  maker_spelling: ({ subject }) => `The maker is written as most rows write it: ${subject ?? ''}.`,
  note_to_look_into: () =>
    'Kept as a note only. If it tells of a worn label or of damage, look at the item and report the defect on its page.',
  other_sheets: ({ subject }) => `Only the first sheet was read. Not read: ${subject ?? 'the others'}.`,
  panel_schedule: () => 'This looks like a panel schedule. Hand it over on the page of its job, not here.',
};

function measureName(subject: string | undefined): string {
  const measure = MEASURES.find((known) => known === subject);
  return measure === undefined ? 'own rating' : MEASURE_NAMES[measure];
}

const ROWS_NAMED = 8;

function rowList(rows: readonly number[] = []): string {
  const named = rows.slice(0, ROWS_NAMED).join(', ');
  const more = rows.length > ROWS_NAMED ? ` and ${rows.length - ROWS_NAMED} more` : '';
  return `${rows.length === 1 ? 'row' : 'rows'} ${named}${more}`;
}
