import type { Change } from '../ledger/ledger.service.js';
import { identityKey, lookAlikeKey } from '../rules/text/look-alike.js';
import type { ItemInput } from './item-input.js';
import { ItemEntity } from './item.entity.js';
import { plainChart } from './plain-chart.js';

/** A row of the register that has no number yet. */
export type NewItemRow = Omit<ItemEntity, 'id' | 'store'>;

/** The columns of a row that a person enters, as against those that use cases decide. */
export type EnteredColumns = Omit<
  NewItemRow,
  | 'condition'
  | 'conditionReason'
  | 'conditionReportedBy'
  | 'conditionSince'
  | 'missing'
  | 'createdAt'
  | 'updatedAt'
  | 'version'
>;

/** Rows of one INSERT: SQLite takes 32,766 values in one statement, and a row has 31. */
const ROWS_AT_A_TIME = 500;

/** What a person entered, as the register keeps it, with the keys it is found and told apart by. */
export function enteredColumns(input: ItemInput): EnteredColumns {
  const serial = input.serialUnknown ? null : (input.serial?.trim() ?? null);
  return {
    tag: input.tag.trim(),
    tagKey: identityKey(input.tag),
    tagLookAlikeKey: lookAlikeKey(input.tag),
    ...papers(input),
    ...hire(input),
    serial,
    serialKey: serial === null ? null : identityKey(serial),
    lookAlikeKey: serial === null ? null : lookAlikeKey(serial),
    maker: input.maker.trim(),
    makerKey: identityKey(input.maker),
    kind: input.kind,
    storeId: input.storeId,
    markings: (input.markings ?? []).map((marking) => ({ ...marking })),
    dimensions: { ...input.dimensions },
    loadChart: input.loadChart ? plainChart(input.loadChart) : null,
    writtenSchemes: (input.writtenSchemes ?? []).map((scheme) => ({ ...scheme })),
    notes: input.notes?.trim() ?? '',
  };
}

/** What the label and the papers say; what is left out is read as `ItemInput` tells. */
function papers(input: ItemInput) {
  return {
    labelLegible: input.labelLegible ?? true,
    certificateOnFile: input.certificateOnFile ?? false,
    batch: input.batch?.trim() || null,
    manufacturedOn: input.manufacturedOn ?? null,
    firstUsedOn: input.firstUsedOn ?? null,
    declarationOn: input.declarationOn ?? null,
  };
}

function hire({ owner, hiredFrom, hiredTo }: ItemInput) {
  return { owner: owner?.trim() ?? null, hiredFrom: hiredFrom ?? null, hiredTo: hiredTo ?? null };
}

/** The row of an item that enters the register, in service, at an instant. The input has passed `checkItem`. */
export function itemRow(input: ItemInput, at: string): NewItemRow {
  return {
    ...enteredColumns(input),
    condition: 'inService',
    conditionReason: null,
    conditionReportedBy: null,
    conditionSince: null,
    missing: false,
    createdAt: at,
    updatedAt: at,
    version: 1,
  };
}

/**
 * Writes the rows with a line of history each, and gives their numbers in the same order.
 * The caller has looked for clashes (`findClashes`) in the same change.
 */
export async function insertItems(change: Change, rows: readonly NewItemRow[]): Promise<number[]> {
  const ids: number[] = [];
  for (let start = 0; start < rows.length; start += ROWS_AT_A_TIME) {
    const chunk = rows
      .slice(start, start + ROWS_AT_A_TIME)
      .map((row) => change.manager.create(ItemEntity, row));
    await change.manager.insert(ItemEntity, chunk);
    for (const item of chunk) {
      ids.push(item.id);
      change.note({
        action: 'item.created',
        subjectKind: 'item',
        subjectId: item.id,
        detail: describe(item),
      });
    }
  }
  return ids;
}

/** What the history says of an item as it was entered: everything but the keys, which follow from the rest. */
export function describe(columns: EnteredColumns): object {
  return {
    tag: columns.tag,
    kind: columns.kind,
    maker: columns.maker,
    serial: columns.serial,
    storeId: columns.storeId,
    labelLegible: columns.labelLegible,
    certificateOnFile: columns.certificateOnFile,
    markings: columns.markings,
    dimensions: columns.dimensions,
    batch: columns.batch,
    owner: columns.owner,
    hiredFrom: columns.hiredFrom,
    hiredTo: columns.hiredTo,
    loadChart: columns.loadChart,
    manufacturedOn: columns.manufacturedOn,
    firstUsedOn: columns.firstUsedOn,
    declarationOn: columns.declarationOn,
    writtenSchemes: columns.writtenSchemes,
    notes: columns.notes,
  };
}
