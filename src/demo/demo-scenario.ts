import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.js';
import type { BookedItemView } from '../custody/booking.dto.js';
import { HandOuts } from '../custody/hand-outs.service.js';
import { Lifts } from '../custody/lifts.service.js';
import { Reservations } from '../custody/reservations.service.js';
import { Returns } from '../custody/returns.service.js';
import { DefectsService } from '../inspections/defects.service.js';
import { JobsService } from '../jobs/jobs.service.js';
import { SYSTEM_ACTOR, type Actor } from '../people/actor.js';
import { DEMO_ACCOUNTS } from '../people/demo-accounts.js';
import { PeopleService } from '../people/people.service.js';
import { addDays, type Day } from '../rules/calendar/day.js';
import { StoresService } from '../stores/stores.service.js';
import { demoJobs } from './demo-jobs.js';
import { earlyOn, noonOf, type DemoCast } from './demo-cast.js';
import { DemoMail } from './demo-mail.js';
import { DemoRegister } from './demo-register.js';

const TIME_ZONE = 'Europe/London';

/** The invented firm of the demo, lived through day by day up to today, so that it is alive on any day. */
@Injectable()
export class DemoScenario {
  constructor(
    private readonly clock: Clock,
    private readonly people: PeopleService,
    private readonly mail: DemoMail,
    private readonly stores: StoresService,
    private readonly register: DemoRegister,
    private readonly defects: DefectsService,
    private readonly jobs: JobsService,
    private readonly reservations: Reservations,
    private readonly handOuts: HandOuts,
    private readonly returns: Returns,
    private readonly lifts: Lifts,
  ) {}

  /** Fills an empty database. */
  async play(): Promise<void> {
    const today = this.clock.today(TIME_ZONE);
    const longAgo = noonOf(addDays(today, -430));
    const cast = await this.clock.at(longAgo, () => this.hire());
    const stores = await this.clock.at(longAgo, () => this.openStores());
    const tags = await this.register.fill({ stores, today, cast });
    const jobs = demoJobs(today, stores);
    await this.pastJob(await this.enter(jobs.past, addDays(today, -30)), { today, cast });
    await this.register.trouble({ today, cast, tags });
    const away = await this.enter(jobs.away, addDays(today, -12));
    const reserved = await this.reserve(away, { on: addDays(today, -9), cast });
    await this.enter(jobs.canBeMet, addDays(today, -5));
    await this.clock.at(noonOf(addDays(today, -4)), () => this.register.hireIn({ stores, today, cast }));
    await this.enter(jobs.short, addDays(today, -3));
    const light = await this.enter(jobs.light, addDays(today, -3));
    await this.awayJob(away, reserved, { today, cast });
    await this.reserve(light, { on: addDays(today, -1), cast });
    await this.laterJob(await this.enter(jobs.later, addDays(today, -3)), { today, cast, tags });
    await this.enter(jobs.unstated, addDays(today, -1));
    await this.mail.look();
  }

  private async hire(): Promise<DemoCast> {
    const actors: Actor[] = [];
    for (const account of DEMO_ACCOUNTS) {
      const { id, name, roles } = await this.people.create(SYSTEM_ACTOR, {
        ...account,
        roles: [...account.roles],
      });
      await this.mail.choose(id, account.signInName);
      actors.push({ id, name, roles });
    }
    const [storeman, crew, examiner] = actors;
    if (!storeman || !crew || !examiner)
      throw new Error('The demo needs a storeman, crew and a competent person.');
    return { storeman, crew, examiner };
  }

  private async openStores(): Promise<readonly [number, number]> {
    const place = { scheme: 'gb', timeZone: TIME_ZONE };
    const quay = await this.stores.create(SYSTEM_ACTOR, {
      name: 'Quayside store',
      address: '12 Ropewalk, Larkmoor Harbour',
      ...place,
    });
    const yard = await this.stores.create(SYSTEM_ACTOR, {
      name: 'Brickfield yard',
      address: 'Brickfield Lane, Ashby Fell',
      ...place,
    });
    return [quay.id, yard.id];
  }

  private async enter(job: Parameters<JobsService['create']>[1], on: Day): Promise<number> {
    return (await this.clock.at(noonOf(on), () => this.jobs.create(SYSTEM_ACTOR, job))).id;
  }

  /** Books what a job needs. Gives the tags. */
  private async reserve(
    jobId: number,
    { on, cast }: { on: Day; cast: DemoCast },
  ): Promise<readonly string[]> {
    const { reserved } = await this.clock.at(noonOf(on), () =>
      this.reservations.reserve(cast.storeman, jobId),
    );
    return reserved;
  }

  private async handOutAll(
    jobId: number,
    tags: readonly string[],
    { on, cast }: { on: Day; cast: DemoCast },
  ): Promise<readonly BookedItemView[]> {
    return this.clock.at(noonOf(on), async () => {
      const given = [];
      for (const tag of tags) given.push(await this.handOuts.handOut(cast.storeman, jobId, { tag }));
      return given;
    });
  }

  /** Reserved, handed out and brought back, with one strap damaged and one left behind. */
  private async pastJob(jobId: number, { today, cast }: Setting): Promise<void> {
    const reserved = await this.reserve(jobId, { on: addDays(today, -28), cast });
    const items = await this.handOutAll(jobId, reserved, { on: addDays(today, -21), cast });
    const straps = items.filter(({ tag }) => tag.startsWith('RS'));
    await this.clock.at(noonOf(addDays(today, -14)), async () => {
      for (const { tag } of items) {
        const condition = tag === straps[0]?.tag ? 'missing' : tag === straps[1]?.tag ? 'damaged' : 'good';
        const remarks = {
          good: '',
          damaged: 'edge cut where it ran over the bottom rail',
          missing: 'not on the truck',
        }[condition];
        await this.returns.bringBack(cast.storeman, jobId, {
          tag,
          condition,
          ...(remarks ? { remarks } : {}),
        });
      }
    });
  }

  /** Out now, with its lifts counted and one trolley found cracked since: the booking is flagged. */
  private async awayJob(jobId: number, reserved: readonly string[], { today, cast }: Setting): Promise<void> {
    const items = await this.handOutAll(jobId, reserved, { on: addDays(today, -2), cast });
    const trolley = items.find(({ tag }) => tag.startsWith('PT'));
    if (!trolley) return;
    await this.countLifts(jobId, { today, cast });
    await this.mail.look(earlyOn(addDays(today, -1)));
    const description = 'crack in the castor fork, left side';
    await this.clock.at(noonOf(addDays(today, -1)), () =>
      this.defects.reportDefect(cast.crew, trolley.itemId, { severity: 'immediateDanger', description }),
    );
    await this.mail.look(noonOf(addDays(today, -1)));
    await this.dropSling(items, { today, cast });
  }

  /** Booked well ahead; then the lifter on it was examined, and is due again in the middle of the job. */
  private async laterJob(
    jobId: number,
    { today, cast, tags }: Setting & { readonly tags: ReadonlyMap<string, number> },
  ): Promise<void> {
    const reserved = await this.reserve(jobId, { on: addDays(today, -2), cast });
    const lifter = tags.get(reserved.find((tag) => tag.startsWith('PL')) ?? '');
    if (lifter === undefined) return;
    const dueAgain = { itemId: lifter, doneOn: addDays(today, -1), nextDueOn: addDays(today, 66), cast };
    await this.register.examineEarly(dueAgain);
  }

  /** A sling fell from the platform this morning: it is overdue, and out on a job. */
  private async dropSling(items: readonly BookedItemView[], { today, cast }: Setting): Promise<void> {
    const sling = items.find(({ tag }) => tag.startsWith('LS'));
    if (!sling) return;
    const dropped = { type: 'dropped', happenedOn: today, remarks: 'fell from the platform' } as const;
    await this.defects.recordEvent(cast.crew, sling.itemId, dropped);
  }

  /** A short first day and a whole one; the first was counted wrongly in the evening, and again in the morning. */
  private async countLifts(jobId: number, { today, cast }: Setting): Promise<void> {
    const [first, second] = [addDays(today, -2), addDays(today, -1)];
    const count = (on: Day, onDay: Day, lifts: number) =>
      this.clock.at(noonOf(on), () => this.lifts.count(cast.crew, jobId, { onDay, lifts }));
    await count(first, first, 6);
    await count(second, first, 7);
    await count(second, second, 15);
  }
}

interface Setting {
  readonly today: Day;
  readonly cast: DemoCast;
}
