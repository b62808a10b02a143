import type { EntityManager } from 'typeorm';
import type { Catalogue } from '../../catalogue/catalogue.js';
import { lastFitDays } from '../../inspections/inspection-days.js';
import type { Day } from '../../rules/calendar/day.js';
import type { InspectionType } from '../../rules/gear/gear.js';
import type { DimensionDefinition } from '../../rules/gear/kind.js';
import type { Marking } from '../../rules/quantities/marking.js';
import { CONDITION_NAMES } from '../../web/sentences/words.js';
import { FIELD_NAMES } from '../import/fields.js';
import { ItemEntity } from '../item.entity.js';
import { examiningType } from './examining-type.js';

/** A store as the export needs it. */
export interface ExportStore {
  readonly id: number;
  readonly name: string;
  readonly scheme: string;
  readonly today: Day;
}

const ITEMS_AT_A_TIME = 1_000;

/** The whole register as rows of text with headings, in the order of entry. The import reads them back as they are. */
export async function exportRows(
  manager: EntityManager,
  { catalogue, stores }: { catalogue: Catalogue; stores: readonly ExportStore[] },
): Promise<string[][]> {
  const sizes = otherSizes(catalogue);
  const rows = [headings(sizes)];
  for (let last = 0; ;) {
    const items = await manager
      .createQueryBuilder(ItemEntity, 'item')
      .where('item.id > :last', { last })
      .orderBy('item.id')
      .limit(ITEMS_AT_A_TIME)
      .getMany();
    const end = items.at(-1);
    if (!end) return rows;
    const examined = await lastFitDays(manager, { after: last, through: end.id });
    for (const item of items) rows.push(itemCells(item, { catalogue, stores, sizes, examined }));
    last = end.id;
  }
}

function headings(sizes: readonly DimensionDefinition[]): string[] {
  const { tag, kind, maker, serial, rating, length, lastExamined, store, condition } = FIELD_NAMES;
  const { labelLegible, certificateOnFile, manufacturedOn, firstUsedOn, notes } = FIELD_NAMES;
  const { batch, owner, hiredFrom, hiredTo } = FIELD_NAMES;
  const sizeNames = sizes.map(({ label, unit }) => `${label} (${unit})`);
  return [
    ...[tag, kind, maker, serial, batch, rating, length, ...sizeNames, lastExamined, store, condition],
    ...[labelLegible, certificateOnFile, manufacturedOn, firstUsedOn, owner, hiredFrom, hiredTo, notes],
  ];
}

/** The sizes that kinds have besides a length, each once. */
function otherSizes(catalogue: Catalogue): DimensionDefinition[] {
  const sizes = catalogue.kinds().flatMap(({ dimensions }) => dimensions);
  return [
    ...new Map(sizes.filter(({ name }) => name !== 'lengthM').map((size) => [size.name, size])).values(),
  ];
}

function itemCells(
  item: ItemEntity,
  facts: {
    readonly catalogue: Catalogue;
    readonly stores: readonly ExportStore[];
    readonly sizes: readonly DimensionDefinition[];
    readonly examined: ReadonlyMap<string, string>;
  },
): string[] {
  const store = facts.stores.find(({ id }) => id === item.storeId);
  const { lengthM } = item.dimensions;
  return [
    ...[
      item.tag,
      facts.catalogue.kind(item.kind).name,
      item.maker,
      item.serial ?? 'unknown',
      item.batch ?? '',
      ratingCell(item.markings),
    ],
    lengthM === undefined ? '' : `${plainFigure(lengthM)} m`,
    ...facts.sizes.map(({ name, unit }) => {
      const size = item.dimensions[name];
      return size === undefined ? '' : `${plainFigure(size)} ${unit}`;
    }),
    store ? lastExamined(item, { ...facts, store }) : '',
    ...[
      store?.name ?? '',
      CONDITION_NAMES[item.condition],
      yesNo(item.labelLegible),
      yesNo(item.certificateOnFile),
    ],
    ...[item.manufacturedOn ?? '', item.firstUsedOn ?? ''],
    ...[item.owner ?? '', item.hiredFrom ?? '', item.hiredTo ?? '', item.notes],
  ];
}

function ratingCell(markings: readonly Marking[]): string {
  return markings
    .map(
      ({ value, unit, condition }) =>
        `${plainFigure(value)} ${unit}${condition === undefined ? '' : ` (${condition})`}`,
    )
    .join('; ');
}

/** A figure that nobody takes for one with its thousands grouped: 1.234 t is written 1.2340 t. */
function plainFigure(value: string): string {
  return /^\d+\.\d{3}$/.test(value) ? `${value}0` : value;
}

function yesNo(value: boolean): string {
  return value ? 'yes' : 'no';
}

/** The last day on which the item passed what its place asks for; a thorough examination does all that an interim inspection does. */
function lastExamined(
  item: ItemEntity,
  {
    catalogue,
    store,
    examined,
  }: { catalogue: Catalogue; store: ExportStore; examined: ReadonlyMap<string, string> },
): string {
  const type = examiningType(catalogue.scheme(store.scheme), item.kind, store.today);
  const types: readonly (InspectionType | undefined)[] =
    type === 'interimInspection' ? [type, 'thoroughExamination'] : [type];
  return types
    .map((each) => examined.get(`${item.id} ${each}`) ?? '')
    .reduce((latest, day) => (day > latest ? day : latest), '');
}
