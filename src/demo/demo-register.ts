import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import { DefectsService } from '../inspections/defects.service.js';
import { InspectionsService } from '../inspections/inspections.service.js';
import { RegisterService } from '../register/register.service.js';
import { addDays, addMonths, type Day } from '../rules/calendar/day.js';
import type { DemoBatch } from './demo-batch.js';
import { noonOf, type DemoCast } from './demo-cast.js';
import { DEMO_BATCHES } from './demo-gear.js';
import { DEMO_ODDITIES, DEMO_SIZES } from './demo-oddities.js';

/** Item numbers by tag. */
type Tags = ReadonlyMap<string, number>;

interface Entry {
  readonly batch: DemoBatch;
  readonly tag: string;
  /** Its place among those of its batch, from 0. */
  readonly place: number;
  /** Counts all items from 0: what varies serials and days from item to item. */
  readonly index: number;
}

interface Setting {
  readonly stores: readonly [number, number];
  readonly today: Day;
  readonly cast: DemoCast;
}

interface EarlyExamination {
  readonly itemId: number;
  readonly doneOn: Day;
  readonly nextDueOn: Day;
  readonly cast: DemoCast;
}

/** Enters the demo gear and what has happened to it. */
@Injectable()
export class DemoRegister {
  constructor(
    private readonly clock: Clock,
    private readonly register: RegisterService,
    private readonly inspections: InspectionsService,
    private readonly defects: DefectsService,
  ) {}

  /** Enters every item of the firm's own and its last examination. Gives the item numbers by tag. */
  async fill({ stores, today, cast }: Setting): Promise<Tags> {
    const entries = listEntries().filter(({ batch }) => !batch.hired);
    const tags = new Map<string, number>();
    await this.clock.at(noonOf(addDays(today, -420)), async () => {
      for (const entry of entries) tags.set(entry.tag, await this.enter(entry, { stores, today, cast }));
    });
    const due = entries
      .filter(({ tag }) => !is(tag, 'neverExamined'))
      .map((entry) => ({ entry, doneOn: examinedOn(entry, today) }))
      .sort((a, b) => (a.doneOn < b.doneOn ? -1 : 1));
    for (const { entry, doneOn } of due) {
      await this.clock.at(noonOf(doneOn), () =>
        this.examine(entry, { itemId: idOf(tags, entry.tag), doneOn, cast }),
      );
    }
    return tags;
  }

  /** Enters what is hired, with the examination whose report its owner sent. */
  async hireIn({ stores, today, cast }: Setting): Promise<void> {
    for (const entry of listEntries().filter(({ batch }) => batch.hired)) {
      const itemId = await this.enter(entry, { stores, today, cast });
      await this.examine(entry, { itemId, doneOn: examinedOn(entry, today), cast });
    }
  }

  /** A competent person passed an item and wants to see it again sooner than the rules ask. */
  async examineEarly({ itemId, doneOn, nextDueOn, cast }: EarlyExamination): Promise<void> {
    await this.clock.at(noonOf(doneOn), () =>
      this.inspections.record(cast.examiner, itemId, {
        type: 'thoroughExamination',
        doneOn,
        outcome: 'fit',
        reportNumber: 'R-6001',
        nextDueOn,
        remarks: 'pads worn near their limit',
      }),
    );
  }

  /** What went wrong with single items in the last weeks. */
  async trouble({ today, cast, tags }: { today: Day; cast: DemoCast; tags: Tags }): Promise<void> {
    await this.clock.at(noonOf(addDays(today, -13)), async () => {
      for (const tag of DEMO_ODDITIES.quarantined)
        await this.defects.quarantine(cast.crew, idOf(tags, tag), 'cut or crack found in the pre-use check');
      for (const tag of DEMO_ODDITIES.underRepair)
        await this.defects.startRepair(
          cast.storeman,
          idOf(tags, tag),
          'brake does not hold; sent to the workshop',
        );
      for (const tag of DEMO_ODDITIES.scrapped) {
        const how = { reason: 'worn through', howMadeUnusable: 'cut into three pieces' };
        await this.defects.scrap(cast.examiner, idOf(tags, tag), how);
      }
      for (const tag of DEMO_ODDITIES.defectWithDeadline) {
        const defect = {
          severity: 'dangerByDate' as const,
          description: 'weld beginning to rust through',
          lastDayOfUse: addDays(today, 9),
        };
        await this.defects.reportDefect(cast.examiner, idOf(tags, tag), defect);
      }
      for (const tag of DEMO_ODDITIES.dropped) {
        const event = {
          type: 'dropped' as const,
          happenedOn: addDays(today, -13),
          remarks: 'fell off the tail lift',
        };
        await this.defects.recordEvent(cast.crew, idOf(tags, tag), event);
      }
    });
  }

  private async enter(entry: Entry, { stores, today, cast }: Setting): Promise<number> {
    const { batch, tag, index } = entry;
    const item = await this.register.create(cast.storeman, {
      tag,
      kind: batch.kind,
      storeId: stores[batch.store],
      maker: batch.maker,
      ...(is(tag, 'serialUnknown') ? { serialUnknown: true } : { serial: serialOf(index) }),
      labelLegible: !is(tag, 'labelIllegible'),
      markings: batch.rating ? [{ ...batch.rating }] : [],
      dimensions: { ...(DEMO_SIZES[tag] ?? batch.dimensions) },
      ...(batch.loadChart && { loadChart: batch.loadChart }),
      ...hireOf(batch, today),
      ...lotOf(entry),
      manufacturedOn: addMonths(today, is(tag, 'tooOld') ? -126 : -20 - (index % 30)),
      firstUsedOn: addMonths(today, is(tag, 'tooOld') ? -120 : -18),
      writtenSchemes: is(tag, 'otherInterval') ? [{ type: 'interimInspection', months: 3 }] : [],
      notes: '',
    });
    return item.id;
  }

  private async examine(
    { batch, tag, index }: Entry,
    { itemId, doneOn, cast }: { itemId: number; doneOn: Day; cast: DemoCast },
  ): Promise<void> {
    const report = is(tag, 'reportMissing') ? {} : { reportNumber: `R-${5000 + index}` };
    const { type } = batch.inspection;
    await this.inspections.record(cast.examiner, itemId, { type, doneOn, outcome: 'fit', ...report });
  }
}

function listEntries(): Entry[] {
  const next = new Map<string, number>();
  const tags = DEMO_BATCHES.flatMap((batch) =>
    Array.from({ length: batch.count }, (_, place) => {
      const number = (next.get(batch.prefix) ?? 0) + 1;
      next.set(batch.prefix, number);
      return { batch, place, tag: `${batch.prefix}-${String(number).padStart(3, '0')}` };
    }),
  );
  return tags.map((entry, index) => ({ ...entry, index }));
}

/** The day of the last examination: most are well in date, some fall due in a few days, some are past. */
function examinedOn({ batch, tag, index }: Entry, today: Day): Day {
  const { months } = batch.inspection;
  if (is(tag, 'outOfDate')) return addDays(addMonths(today, -months), -(5 + (index % 20)));
  if (is(tag, 'dueInAFewDays')) return addDays(addMonths(today, -months), 3 + (index % 8));
  return addDays(today, -(32 + ((index * 37) % (months * 15))));
}

/** Whose a hired item is, and the days of its hire. */
function hireOf({ hired }: DemoBatch, today: Day): { owner?: string; hiredFrom?: Day; hiredTo?: Day } {
  if (!hired) return {};
  return {
    owner: hired.owner,
    hiredFrom: addDays(today, hired.from),
    hiredTo: addDays(today, hired.to),
  };
}

/** The maker's own batch, where the gear came in any. */
function lotOf({ batch: { lots = [], count }, place }: Entry): { batch?: string } {
  const lot = lots[Math.floor((place * lots.length) / count)];
  return lot === undefined ? {} : { batch: lot };
}

function is(tag: string, oddity: keyof typeof DEMO_ODDITIES): boolean {
  return DEMO_ODDITIES[oddity].some((odd) => odd === tag);
}

function idOf(tags: Tags, tag: string): number {
  const id = tags.get(tag);
  if (id === undefined) throw new Error(`The demo has no item ${tag}.`);
  return id;
}

function serialOf(index: number): string {
  const letters = 'ACDEFHJKMNPRTUVWXY';
  return `${letters[index % letters.length]}${40_000 + index * 173}`;
}
