import { badInput } from '../../http/input.js';
import type { FieldError } from '../../problem.js';
import { isField } from './fields.js';
import type { ImportMappingDto } from './import.dto.js';
import { plainMapping, type ImportMapping } from './mapping.js';
import { plainWords } from './plain-words.js';

/** What a mapping may name. */
interface Known {
  readonly columns: number;
  readonly kinds: readonly string[];
  readonly stores: readonly number[];
}

/**
 * The mapping that a storeman asks for.
 * @throws Problem `bad_input` of another number of columns, a field twice, or an unknown field, kind or store.
 */
export function mappingFrom(input: ImportMappingDto, known: Known): ImportMapping {
  const columns = input.columns.map((field) => (field === '' ? null : isField(field) ? field : undefined));
  const errors = [...columnErrors(columns, known), ...wordErrors(input, known)];
  if (errors.length > 0) throw badInput(errors);
  return {
    ...plainMapping(columns.map((field) => field ?? null)),
    dateOrder: input.dateOrder ?? 'unknown',
    decimalMark: input.decimalMark ?? 'unknown',
    lengthUnit: input.lengthUnit ?? null,
    massUnit: input.massUnit ?? null,
    forceUnit: input.forceUnit ?? null,
    kinds: Object.fromEntries(
      (input.kinds ?? []).flatMap(({ word, kind }) => (kind ? [[plainWords(word), kind]] : [])),
    ),
    stores: Object.fromEntries(
      (input.stores ?? []).flatMap(({ word, storeId }) => (storeId ? [[plainWords(word), storeId]] : [])),
    ),
    storeId: input.storeId ?? null,
    reportsOnFile: input.reportsOnFile ?? false,
  };
}

/** A mapping as the API and the page write it. */
export function mappingView(mapping: ImportMapping): ImportMappingDto {
  const { dateOrder, decimalMark, lengthUnit, massUnit, forceUnit, storeId, reportsOnFile } = mapping;
  return {
    columns: mapping.columns.map((field) => field ?? ''),
    dateOrder,
    decimalMark,
    ...(lengthUnit === null ? {} : { lengthUnit }),
    ...(massUnit === null ? {} : { massUnit }),
    ...(forceUnit === null ? {} : { forceUnit }),
    kinds: Object.entries(mapping.kinds).map(([word, kind]) => ({ word, kind })),
    stores: Object.entries(mapping.stores).map(([word, id]) => ({ word, storeId: id })),
    ...(storeId === null ? {} : { storeId }),
    reportsOnFile,
  };
}

function columnErrors(columns: readonly (string | null | undefined)[], known: Known): FieldError[] {
  if (columns.length !== known.columns) {
    return [
      {
        field: 'columns',
        message: `name ${known.columns} fields, one for each column; an empty text leaves one out`,
      },
    ];
  }
  const named = columns.filter((field) => field !== null);
  const twice = named.find((field, index) => field !== undefined && named.indexOf(field) !== index);
  if (named.includes(undefined)) return [{ field: 'columns', message: 'names a field that does not exist' }];
  return twice === undefined
    ? []
    : [{ field: 'columns', message: `'${twice}' is said to stand in two columns; choose one` }];
}

function wordErrors({ kinds = [], stores = [], storeId }: ImportMappingDto, known: Known): FieldError[] {
  const errors: FieldError[] = [];
  if (kinds.some(({ kind }) => kind !== undefined && !known.kinds.includes(kind))) {
    errors.push({ field: 'kinds', message: `choose from ${known.kinds.join(', ')}` });
  }
  const asked = [...stores.map((store) => store.storeId), storeId];
  if (asked.some((id) => id !== undefined && !known.stores.includes(id))) {
    errors.push({ field: 'stores', message: 'names a store that does not exist' });
  }
  return errors;
}
