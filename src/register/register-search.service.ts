import { Injectable } from '@nestjs/common';
import { In, type SelectQueryBuilder } from 'typeorm';
import { identityKey } from '../rules/text/look-alike.js';
import { Reads } from '../storage/reads.js';
import { batchSpellings } from './batch-items.js';
import { cursorAfter, tagKeyBefore } from './cursor.js';
import { asRow } from './item-views.js';
import { ItemEntity } from './item.entity.js';
import type { ItemRowView } from './register.dto.js';
import type { FindItemsDto, ItemPageView } from './register-search.dto.js';
import { Standings } from './standings.service.js';

const DEFAULT_LIMIT = 50;

/** Where currency is asked for it has to be computed item by item: this many are looked at for one answer. */
const MOST_COMPUTED = 2_000;
const COMPUTED_AT_A_TIME = 500;

/** Sorts after every sign that a key can hold, so that `key < prefix + LAST_SIGN` ends the range of a prefix. */
const LAST_SIGN = '\u{10FFFF}';

/** Finds items of the register, a page at a time in the order of their tags. */
@Injectable()
export class RegisterSearch {
  constructor(
    private readonly reads: Reads,
    private readonly standings: Standings,
  ) {}

  /** @throws Problem `bad_input` of a cursor that is not one of ours. */
  async find(query: FindItemsDto): Promise<ItemPageView> {
    const limit = query.limit ?? DEFAULT_LIMIT;
    const found: ItemRowView[] = [];
    let after = query.after === undefined ? undefined : tagKeyBefore(query.after);
    const atATime = query.currency === undefined ? limit : COMPUTED_AT_A_TIME;
    for (let seen = 0; seen < MOST_COMPUTED; seen += atATime) {
      const items = await this.itemsAfter(after, query, atATime + 1);
      const chunk = items.slice(0, atATime);
      for (const [place, row] of (await this.asRows(chunk)).entries()) {
        after = chunk[place]?.tagKey;
        if (query.currency === undefined || row.currency === query.currency) found.push(row);
        if (found.length < limit) continue;
        return pageOf(found, place === items.length - 1 ? undefined : after);
      }
      if (items.length <= atATime) return { items: found };
    }
    return pageOf(found, after);
  }

  private async asRows(items: readonly ItemEntity[]): Promise<ItemRowView[]> {
    const standings = await this.standings.load(this.reads.manager, items);
    return items.flatMap((item) => {
      const standing = standings.get(item.id);
      return standing ? [asRow(item, standing)] : [];
    });
  }

  private async itemsAfter(
    after: string | undefined,
    query: FindItemsDto,
    limit: number,
  ): Promise<ItemEntity[]> {
    const builder = this.reads.manager
      .createQueryBuilder(ItemEntity, 'item')
      .orderBy('item.tagKey')
      .limit(limit);
    if (after !== undefined) builder.andWhere('item.tagKey > :after', { after });
    if (query.kind !== undefined) builder.andWhere('item.kind = :kind', { kind: query.kind });
    if (query.storeId !== undefined) builder.andWhere('item.storeId = :storeId', { storeId: query.storeId });
    if (query.condition !== undefined)
      builder.andWhere('item.condition = :condition', { condition: query.condition });
    if (query.batch !== undefined)
      builder.andWhere({ batch: In(await batchSpellings(this.reads.manager, query.batch)) });
    if (query.text !== undefined) whereKeyStartsWith(builder, identityKey(query.text));
    return builder.getMany();
  }
}

/** A page, with the way to the next unless this is the last. */
function pageOf(items: ItemRowView[], after: string | undefined): ItemPageView {
  return after === undefined ? { items } : { items, next: cursorAfter(after) };
}

/** Tag, serial number or maker: a range of an index each, however long the register. */
function whereKeyStartsWith(builder: SelectQueryBuilder<ItemEntity>, prefix: string): void {
  const ranges = ['tag_key', 'serial_key', 'maker_key'].map(
    (column) => `SELECT id FROM item WHERE ${column} >= :prefix AND ${column} < :beyond`,
  );
  builder.andWhere(`item.id IN (${ranges.join(' UNION ')})`, { prefix, beyond: prefix + LAST_SIGN });
}
