import { In, type EntityManager } from 'typeorm';
import { inspectedDays } from '../../inspections/inspection-days.js';
import { Exact } from '../../rules/quantities/exact.js';
import type { Marking } from '../../rules/quantities/marking.js';
import { toSi } from '../../rules/quantities/units.js';
import { findClashes, type Clash } from '../clashes.js';
import { ItemEntity } from '../item.entity.js';
import { enteredColumns } from '../new-item.js';
import { batchKey } from '../batch-items.js';
import type { Field } from './fields.js';
import type { RowEntry, RowReading } from './read-row.js';

/** How a row stands to the register. */
export type Standing =
  | { readonly is: 'new' }
  /** The register says all that the row says. */
  | { readonly is: 'unchanged' }
  /** The tag is there with other content: the first field that differs. */
  | { readonly is: 'different'; readonly field: string }
  /** Another item has the serial number, or one that looks like it. */
  | { readonly is: 'clashing'; readonly clash: Clash };

const KEYS_AT_A_TIME = 500;

/** A row that can be compared. */
export type WholeReading = RowReading & { readonly entry: RowEntry };

/** The standing of each row, in their order. */
export async function compareWithRegister(
  manager: EntityManager,
  readings: readonly WholeReading[],
): Promise<Standing[]> {
  const columns = readings.map(({ entry }) => enteredColumns(entry.input));
  const items = await itemsByTag(
    manager,
    columns.map(({ tagKey }) => tagKey),
  );
  const examined = await inspectedDays(
    manager,
    [...items.values()].map(({ id }) => id),
  );
  const clashes = new Map((await findClashes(manager, columns)).map((clash) => [clash.index, clash]));
  return readings.map(({ entry }, index) => {
    const item = items.get(columns[index]?.tagKey ?? '');
    if (item) {
      const field = difference(entry, item, examined);
      return field === undefined ? { is: 'unchanged' } : { is: 'different', field };
    }
    const clash = clashes.get(index);
    return clash ? { is: 'clashing', clash } : { is: 'new' };
  });
}

async function itemsByTag(
  manager: EntityManager,
  tagKeys: readonly string[],
): Promise<Map<string, ItemEntity>> {
  const items = new Map<string, ItemEntity>();
  for (let start = 0; start < tagKeys.length; start += KEYS_AT_A_TIME) {
    const found = await manager.findBy(ItemEntity, {
      tagKey: In(tagKeys.slice(start, start + KEYS_AT_A_TIME)),
    });
    for (const item of found) items.set(item.tagKey, item);
  }
  return items;
}

/** The first field in which the row says something else than the register; what the row leaves blank says nothing. */
function difference(
  { input, given, examined }: RowEntry,
  item: ItemEntity,
  days: ReadonlySet<string>,
): string | undefined {
  const columns = enteredColumns(input);
  const size = Object.entries(columns.dimensions).find(
    ([name, value]) => !sameFigure(value, item.dimensions[name]),
  );
  const { markings, manufacturedOn, firstUsedOn } = columns;
  const differs = (field: Field, one: unknown, other: unknown) => given.has(field) && one !== other;
  const otherDay = (one: string | null, other: string | null) => one !== null && one !== other;
  const comparisons: readonly (readonly [differs: boolean, field: string])[] = [
    [columns.makerKey !== item.makerKey, 'maker'],
    [columns.serialKey !== item.serialKey, 'serial number'],
    [columns.kind !== item.kind, 'kind'],
    [differs('store', columns.storeId, item.storeId), 'store'],
    [markings.length > 0 && !sameMarkings(markings, item.markings), 'rating'],
    [size !== undefined, size?.[0] === 'lengthM' ? 'length' : (size?.[0] ?? '')],
    [differs('batch', batchKey(columns.batch), batchKey(item.batch)), 'batch'],
    [differs('owner', columns.owner, item.owner), 'owner'],
    [otherDay(columns.hiredFrom, item.hiredFrom), 'first day of hire'],
    [otherDay(columns.hiredTo, item.hiredTo), 'last day of hire'],
    [differs('notes', columns.notes, item.notes), 'note'],
    [differs('labelLegible', columns.labelLegible, item.labelLegible), 'word on its label'],
    [differs('certificateOnFile', columns.certificateOnFile, item.certificateOnFile), 'word on its report'],
    [otherDay(manufacturedOn, item.manufacturedOn), 'day of manufacture'],
    [otherDay(firstUsedOn, item.firstUsedOn), 'day of first use'],
    [examined !== undefined && !days.has(`${item.id} ${examined.on}`), 'day of examination'],
  ];
  return comparisons.find(([isDifferent]) => isDifferent)?.[1];
}

function sameMarkings(ones: readonly Marking[], others: readonly Marking[]): boolean {
  return (
    ones.length === others.length &&
    ones.every((one, index) => {
      const other = others[index];
      if (!other || other.measure !== one.measure || other.condition !== one.condition) return false;
      const [first, second] = [toSi(one.value, one.unit), toSi(other.value, other.unit)];
      return first.unit === second.unit && first.value.compare(second.value) === 0;
    })
  );
}

function sameFigure(one: string, other: string | undefined): boolean {
  return other !== undefined && Exact.of(one).compare(Exact.of(other)) === 0;
}
