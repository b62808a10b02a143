import { Injectable } from '@nestjs/common';
import { In } from 'typeorm';
import { Catalogue } from '../catalogue/catalogue.js';
import { Clock } from '../clock.js';
import { CommitmentsService } from '../custody/commitments.service.js';
import { badInput } from '../http/input.js';
import { refuseStale } from '../http/version.js';
import { Ledger, type Change } from '../ledger/ledger.service.js';
import type { Actor } from '../people/actor.js';
import { Problem } from '../problem.js';
import { isUniqueViolation } from '../storage/engine-errors.js';
import { Reads } from '../storage/reads.js';
import { findStore } from '../stores/find-store.js';
import { checkItem, type CheckContext } from './check-item.js';
import { clashProblem, findClashes } from './clashes.js';
import { changeItem, lockItem, noSuchItem, refuseScrapped } from './item-condition.js';
import { changedInput, newInput } from './item-change.js';
import type { ItemInput } from './item-input.js';
import { asRow, asView } from './item-views.js';
import { ItemEntity } from './item.entity.js';
import { describe, enteredColumns, insertItems, itemRow, type EnteredColumns } from './new-item.js';
import type { ChangeItemDto, ItemRowView, ItemView, NewItemDto } from './register.dto.js';
import { Standings, type Standing } from './standings.service.js';

/** The register of gear by serial number. */
@Injectable()
export class RegisterService {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
    private readonly clock: Clock,
    private readonly commitments: CommitmentsService,
    private readonly standings: Standings,
  ) {}

  /** @throws Problem `not_found`. */
  async get(id: number): Promise<ItemView> {
    return (await this.read(id)).view;
  }

  /** Items as a list shows them, in the order of the numbers given; numbers of no item are left out. */
  async rows(ids: readonly number[]): Promise<ItemRowView[]> {
    const items = await this.reads.manager.findBy(ItemEntity, { id: In([...ids]) });
    const standings = await this.standings.load(this.reads.manager, items);
    const rows = items.flatMap((item) => {
      const standing = standings.get(item.id);
      return standing ? [asRow(item, standing)] : [];
    });
    const places = new Map(ids.map((id, place) => [id, place]));
    return rows.sort((a, b) => (places.get(a.id) ?? 0) - (places.get(b.id) ?? 0));
  }

  /** Where an item stands today. @throws Problem `not_found`. */
  async standing(id: number): Promise<Standing> {
    return (await this.read(id)).standing;
  }

  /** @throws Problem `bad_input`, `tag_taken`, `serial_taken`, `serial_looks_alike`. */
  async create(actor: Actor, input: NewItemDto): Promise<ItemView> {
    const id = await this.ledger.change(actor, async (change) => {
      const entered = newInput(input);
      await this.refuseWrong(change, entered);
      const row = itemRow(entered, change.at);
      await refuseClashes(change, row, { acceptLookAlike: input.acceptLookAlike ?? false });
      const [made] = await insertItems(change, [row]).catch(sayTaken);
      return made;
    });
    if (id === undefined) throw new Error('The new item got no number.');
    return this.get(id);
  }

  /** @throws Problem `not_found`, `changed_meanwhile`, `not_allowed_now` and those of `create`. */
  async edit(
    actor: Actor,
    id: number,
    { version, input }: { version: number; input: ChangeItemDto },
  ): Promise<ItemView> {
    await this.ledger.change(actor, async (change) => {
      const item = await lockItem(change, id);
      refuseStale(item.tag, { read: version, now: item.version });
      refuseScrapped(item);
      const entered = changedInput(item, input);
      const { today } = await this.refuseWrong(change, entered);
      const columns = enteredColumns(entered);
      const sameSerial = columns.makerKey === item.makerKey && columns.serialKey === item.serialKey;
      const acceptLookAlike = sameSerial || (input.acceptLookAlike ?? false);
      await refuseClashes(change, columns, { acceptLookAlike, except: id });
      if (bearsOnFitness(item, columns))
        await this.commitments.flag(change, item, { because: 'item.edited', today });
      await changeItem(change, item, columns).catch(sayTaken);
      change.note({ action: 'item.edited', subjectKind: 'item', subjectId: id, detail: describe(columns) });
    });
    return this.get(id);
  }

  /** An item and where it stands. @throws Problem `not_found`. */
  private async read(id: number): Promise<{ view: ItemView; standing: Standing }> {
    const item = await this.reads.manager.findOneBy(ItemEntity, { id });
    const standing = item && (await this.standings.load(this.reads.manager, [item])).get(id);
    if (!standing) throw noSuchItem(id);
    return { view: asView(item, standing), standing };
  }

  /** Checks an entry against the catalogue and its store. Gives the store's today. */
  private async refuseWrong(change: Change, input: ItemInput): Promise<CheckContext> {
    const store = await findStore(change.manager, input.storeId);
    if (!store) throw badInput([{ field: 'storeId', message: 'there is no such store' }]);
    const context = {
      kind: this.catalogue.kinds().find(({ kind }) => kind === input.kind),
      today: this.clock.today(store.timeZone),
      scheme: this.catalogue.scheme(store.scheme),
    };
    const errors = checkItem(input, context);
    if (errors.length > 0) throw badInput(errors);
    return context;
  }
}

async function refuseClashes(
  change: Change,
  columns: EnteredColumns,
  { acceptLookAlike, except }: { acceptLookAlike: boolean; except?: number },
): Promise<void> {
  const clashes = await findClashes(change.manager, [columns], except);
  const inOrder = (['tag_taken', 'serial_taken', 'serial_looks_alike'] as const)
    .filter((code) => code !== 'serial_looks_alike' || !acceptLookAlike)
    .flatMap((code) => clashes.filter((clash) => clash.code === code));
  if (inOrder[0]) throw clashProblem(inOrder[0]);
}

/** Two requests at the same moment: the database lets one through. */
function sayTaken(error: unknown): never {
  if (isUniqueViolation(error, { table: 'item', columns: ['tag_key'] })) {
    throw new Problem('tag_taken', 'Another item got that tag a moment ago.');
  }
  if (isUniqueViolation(error, { table: 'item', columns: ['maker_key', 'serial_key'] })) {
    throw new Problem('serial_taken', 'Another item got that maker and serial number a moment ago.');
  }
  throw error;
}

/** Whether an edit touches anything but names and notes: then the jobs the item is promised to look again. */
function bearsOnFitness(item: ItemEntity, columns: EnteredColumns): boolean {
  const names = { tag: '', maker: '', batch: '', owner: '', notes: '' };
  return (
    JSON.stringify({ ...describe(item), ...names }) !== JSON.stringify({ ...describe(columns), ...names })
  );
}
