import type { Day } from '../../rules/calendar/day.js';
import type { InspectionType } from '../../rules/gear/gear.js';
import type { KindDefinition } from '../../rules/gear/kind.js';
import { checkItem } from '../check-item.js';
import { examiningType } from '../export/examining-type.js';
import type { ItemInput } from '../item-input.js';
import { FIELDS, type Field } from './fields.js';
import type { Fault, Notice } from './finding.js';
import { lettersApart, plainWords } from './plain-words.js';
import { readDate } from './read-date.js';
import { readMarkings, readSizes } from './read-figures.js';
import { readHire } from './read-hire.js';
import type { ImportStore, ReadingContext } from './reading-context.js';
import { RowReader } from './row-reader.js';
import type { TableRow } from './table.js';

/** A row as an item and its last examination. */
export interface RowEntry {
  readonly input: ItemInput;
  readonly examined?: { readonly type: InspectionType; readonly on: Day };
  /** The fields in which something is written: a blank says nothing against what the register holds. */
  readonly given: ReadonlySet<Field>;
  /** Whether the file says that it is not in service: then it is not taken, however sound. */
  readonly outOfService: boolean;
}

/** What one row says. Without faults there is an entry. */
export interface RowReading {
  readonly row: TableRow;
  readonly tag: string | undefined;
  readonly maker: string | undefined;
  readonly serial: string | undefined;
  readonly faults: readonly Fault[];
  readonly notices: readonly Notice[];
  readonly entry?: RowEntry;
}

/** Reads one row, finding everything wrong with it and not the first fault only. */
export function readRow(row: TableRow, context: ReadingContext): RowReading {
  const reader = new RowReader(row, context);
  const [tag, maker] = [readMark(reader, 'tag'), readMark(reader, 'maker')];
  const { serial, serialUnknown } = readSerial(reader);
  const kind = readKind(reader);
  const store = readStore(reader);
  const figures = kind ? { markings: readMarkings(reader, kind), dimensions: readSizes(reader, kind) } : {};
  const days = readDays(reader, store);
  const rest = {
    ...figures,
    ...readBatch(reader),
    ...readTicks(reader),
    ...readHire(reader),
    notes: readNotes(reader),
  };
  const examined = kind && store ? examination({ reader, kind, store, on: days.lastExamined }) : undefined;
  const { faults, notices } = reader;
  const reading = { row, tag, maker, serial, faults, notices };
  if (faults.length > 0 || !kind || !store || !tag || !maker) return reading;
  const identity = { tag, maker, ...(serial === undefined ? { serialUnknown } : { serial }) };
  const input: ItemInput = { ...identity, kind: kind.kind, storeId: store.id, ...usedDays(days), ...rest };
  refuseUnaccepted(reader, input, { kind, store });
  if (faults.length > 0) return reading;
  return {
    ...reading,
    entry: {
      input,
      given: given(reader),
      outOfService: isOutOfService(reader),
      ...(examined && { examined }),
    },
  };
}

function readBatch(reader: RowReader): { readonly batch?: string } {
  const batch = reader.text('batch');
  return batch ? { batch } : {};
}

function readSerial(reader: RowReader): { serial: string | undefined; serialUnknown: boolean } {
  const serialUnknown = isSerialUnknown(reader);
  return { serialUnknown, serial: serialUnknown ? undefined : readMark(reader, 'serial') };
}

/** What the register itself would refuse is a fault of the row. */
function refuseUnaccepted(
  reader: RowReader,
  input: ItemInput,
  {
    kind,
    store,
  }: { kind: NonNullable<ReturnType<typeof readKind>>; store: NonNullable<ReturnType<typeof readStore>> },
): void {
  for (const { field, message } of checkItem(input, { kind, today: store.today, scheme: store.scheme })) {
    reader.fault(FIELDS.find((known) => field.startsWith(known)) ?? 'rating', 'not_accepted', {
      subject: message,
    });
  }
}

function usedDays({ manufacturedOn, firstUsedOn }: ReturnType<typeof readDays>) {
  return { ...(manufacturedOn && { manufacturedOn }), ...(firstUsedOn && { firstUsedOn }) };
}

function given(reader: RowReader): Set<Field> {
  const fields = reader.context.mapping.columns.filter((field) => field !== null);
  return new Set(fields.filter((field) => reader.cell(field).text !== ''));
}

/** Spreadsheets show long numbers as 5.14E+12 and keep fifteen digits of them. */
const DAMAGED = /^\d(?:[.,]\d+)?E\+?\d{1,3}$/i;

function readMark(reader: RowReader, field: 'tag' | 'maker' | 'serial'): string | undefined {
  const text = reader.text(field);
  if (text === undefined)
    return reader.cell(field).is === 'formula' ? undefined : reader.fault(field, 'blank_cell');
  const isLongNumber = reader.cell(field).is === 'number' && text.replace(/\D/g, '').length > 15;
  if (DAMAGED.test(text) || isLongNumber) return reader.fault(field, 'damaged_number');
  if (/^[-–—?.]+$/.test(text)) return reader.fault(field, 'blank_cell');
  return text;
}

const UNKNOWN = new Set([
  'unknown',
  'unbekannt',
  'inconnu',
  'onbekend',
  'desconocido',
  'sconosciuto',
  'desconhecido',
  'nieznany',
  'okand',
  'ukendt',
  'ukjent',
]);

/** A serial number that is said to be unknown: such an item is registered, and refused for every duty. */
function isSerialUnknown(reader: RowReader): boolean {
  if (!UNKNOWN.has(plainWords(reader.cell('serial').text))) return false;
  reader.notice('serial', 'serial_unknown');
  return true;
}

/** No further apart than a slip of the finger or two. */
const SLIPS = 2;
const LONGEST_WORD = 60;

function readKind(reader: RowReader): KindDefinition | undefined {
  const text = reader.text('kind');
  if (text === undefined)
    return reader.cell('kind').is === 'formula' ? undefined : reader.fault('kind', 'blank_cell');
  const kind = reader.context.kindOfWords.get(plainWords(text));
  if (kind) return kind;
  const names = text.length > LONGEST_WORD ? [] : reader.context.kindNames;
  const words = names.map((name) => ({ name, apart: lettersApart(plainWords(name), plainWords(text)) }));
  const nearest = words.reduce((best, next) => (next.apart < best.apart ? next : best), {
    name: '',
    apart: SLIPS + 1,
  });
  return reader.fault('kind', 'unknown_kind', nearest.name === '' ? {} : { subject: nearest.name });
}

function readStore(reader: RowReader): ImportStore | undefined {
  const text = reader.text('store');
  if (text === undefined) return reader.context.store ?? reader.fault('store', 'blank_cell');
  return reader.context.storeOfWords.get(plainWords(text)) ?? reader.fault('store', 'unknown_store');
}

const DAY_FIELDS = ['lastExamined', 'manufacturedOn', 'firstUsedOn'] as const;

function readDays(
  reader: RowReader,
  store: ImportStore | undefined,
): Partial<Record<(typeof DAY_FIELDS)[number], Day>> {
  const today = store?.today ?? reader.context.latestToday;
  const days: Partial<Record<(typeof DAY_FIELDS)[number], Day>> = {};
  for (const field of DAY_FIELDS) {
    const text = reader.text(field);
    if (text === undefined || /^[-–—]$/.test(text)) continue;
    const reading = readDate(text, reader.context.dateOrder);
    if (!reading.ok) reader.fault(field, reading.reason);
    else if (reading.day > today) reader.fault(field, 'future_day', { subject: today });
    else days[field] = reading.day;
  }
  const { lastExamined, manufacturedOn } = days;
  if (lastExamined && manufacturedOn && lastExamined < manufacturedOn) {
    reader.fault('lastExamined', 'not_accepted', { subject: 'it was examined before it was made' });
  }
  return days;
}

/** A 'last exam' is of the type that the rules of the store ask for at intervals, the most thorough of them. */
function examination({
  reader,
  kind,
  store,
  on,
}: {
  reader: RowReader;
  kind: KindDefinition;
  store: ImportStore;
  on: Day | undefined;
}) {
  const type = examiningType(store.scheme, kind.kind, store.today);
  if (on === undefined) {
    if (type !== undefined && reader.cell('lastExamined').text === '')
      reader.notice('lastExamined', 'never_examined');
    return undefined;
  }
  if (type !== undefined) return { type, on };
  reader.notice('lastExamined', 'examination_not_kept', { subject: kind.name.toLowerCase() });
  return undefined;
}

const YES = new Set(['yes', 'y', 'true', '1', 'ja', 'j', 'oui', 'si', 'sim', 'tak', 'x']);
const NO = new Set(['no', 'n', 'false', '0', 'nein', 'non', 'nee', 'nao', 'nie', 'nej', 'nei']);

function readTicks(reader: RowReader): Pick<ItemInput, 'labelLegible' | 'certificateOnFile'> {
  const labelLegible = readTick(reader, 'labelLegible');
  const certificateOnFile = readTick(reader, 'certificateOnFile') ?? reader.context.mapping.reportsOnFile;
  return { certificateOnFile, ...(labelLegible === undefined ? {} : { labelLegible }) };
}

function readTick(reader: RowReader, field: 'labelLegible' | 'certificateOnFile'): boolean | undefined {
  const text = reader.text(field);
  if (text === undefined) return undefined;
  const word = plainWords(text);
  if (YES.has(word)) return true;
  return NO.has(word) ? false : reader.fault(field, 'not_yes_or_no');
}

/** Words of a note that may tell of a worn label or of damage, in some languages, by their beginnings. From memory. */
const TELLING =
  /(?:^|[^\p{L}])(?:label|etikett|etiquet|worn|wear|damag|bent|cut|crack|torn|rust|corro|missing|repair|quarantin|verschlissen|beschadig|verbogen|riss|angerostet|rost|defekt|defect|endommag|rouill|versleten|roest|danad|oxid|danneggi|ruggin|uszkodz|rdza|skad)/u;

function readNotes(reader: RowReader): string {
  const notes = reader.text('notes') ?? '';
  if (notes.length > 1000) reader.fault('notes', 'too_long', { subject: '1000' });
  if (TELLING.test(plainWords(notes))) reader.notice('notes', 'note_to_look_into');
  return notes;
}

const IN_SERVICE = new Set([
  'in service',
  'in use',
  'ok',
  'good',
  'fit',
  'serviceable',
  'gut',
  'in ordnung',
  'io',
  'i o',
  'bon',
  'goed',
  'bueno',
  'buono',
  'bom',
  'dobry',
]);

/** A file must not bring gear back into use that was taken out of it elsewhere. */
function isOutOfService(reader: RowReader): boolean {
  const { text } = reader.cell('condition');
  return text !== '' && !IN_SERVICE.has(plainWords(text));
}
