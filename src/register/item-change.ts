import type { LoadChart } from '../rules/hosting/load-chart.js';
import type { ItemInput } from './item-input.js';
import type { ItemEntity } from './item.entity.js';
import type { ChangeItemDto, NewItemDto } from './register.dto.js';

/** A request for a new item as the register's own checks read it. */
export function newInput(input: NewItemDto): ItemInput {
  const { tag, kind, storeId, maker } = input;
  const { serial, serialUnknown, labelLegible, certificateOnFile, markings, dimensions, writtenSchemes } =
    input;
  const { manufacturedOn, firstUsedOn, declarationOn, notes } = input;
  const { batch, owner, hiredFrom, hiredTo, loadChart } = input;
  const flags = { serialUnknown, labelLegible, certificateOnFile };
  const days = { manufacturedOn, firstUsedOn, declarationOn };
  const hire = { owner, hiredFrom, hiredTo };
  return {
    tag,
    kind,
    storeId,
    maker,
    ...present({
      serial,
      markings,
      dimensions,
      writtenSchemes,
      notes,
      ...flags,
      ...days,
      ...hire,
      batch,
      loadChart,
    }),
  };
}

/** The whole item as it would be after a change: what the change leaves out stays, and null clears. */
export function changedInput(item: ItemEntity, input: ChangeItemDto): ItemInput {
  const serialUnknown = input.serialUnknown ?? (input.serial === undefined && item.serial === null);
  const serial = serialUnknown && input.serial === undefined ? null : kept(input.serial, item.serial);
  return {
    tag: kept(input.tag, item.tag),
    kind: kept(input.kind, item.kind),
    storeId: kept(input.storeId, item.storeId),
    maker: kept(input.maker, item.maker),
    serialUnknown,
    labelLegible: kept(input.labelLegible, item.labelLegible),
    certificateOnFile: kept(input.certificateOnFile, item.certificateOnFile),
    markings: kept<ItemInput['markings']>(input.markings, item.markings) ?? [],
    dimensions: kept(input.dimensions, item.dimensions),
    writtenSchemes: kept<ItemInput['writtenSchemes']>(input.writtenSchemes, item.writtenSchemes) ?? [],
    ...present({
      serial,
      manufacturedOn: kept(input.manufacturedOn, item.manufacturedOn),
      firstUsedOn: kept(input.firstUsedOn, item.firstUsedOn),
      declarationOn: kept(input.declarationOn, item.declarationOn),
      batch: kept(input.batch, item.batch),
      owner: kept(input.owner, item.owner),
      hiredFrom: kept(input.hiredFrom, item.hiredFrom),
      hiredTo: kept(input.hiredTo, item.hiredTo),
      loadChart: kept<LoadChart | null>(input.loadChart, item.loadChart),
      notes: kept(input.notes, item.notes),
    }),
  };
}

function kept<T>(given: T | undefined, before: T): T {
  return given === undefined ? before : given;
}

type Present<T> = { [Name in keyof T]?: NonNullable<T[Name]> };

/** The fields that say something, without those that are null or left out. */
function present<T extends object>(fields: T): Present<T> {
  return Object.fromEntries(
    Object.entries(fields).filter(([, value]) => value !== null && value !== undefined),
  ) as Present<T>;
}
