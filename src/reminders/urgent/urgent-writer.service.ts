import { Injectable } from '@nestjs/common';
import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Clock } from '../../clock.js';
import { takeUnmailed, type UnmailedNotice } from '../../notices/unmailed-notices.js';
import { UnitOfWork } from '../../storage/unit-of-work.js';
import { letter } from '../mails/letter.js';
import { later } from '../outbox/next-try.js';
import { Outbox } from '../outbox/post-mail.js';
import type { MailPerson } from '../preferences/mail-person.js';
import { rememberFlags } from './told-flags.js';
import { bookingKey, type Replacement, type UnfitBooking } from './unfit-booking.js';
import { urgentHearers } from './urgent-hearers.js';
import { mattersKey, urgentMatters, type ReplacedFlag } from './urgent-matter.js';
import { urgentContent, type UrgentFacts } from './urgent-model.js';

/** How things stand, to be told as far as it is new. */
export interface UrgentRound extends Pick<UrgentFacts, 'kindName' | 'address'> {
  readonly people: readonly MailPerson[];
  readonly storeIds: readonly number[];
  readonly unfit: readonly UnfitBooking[];
  /** What to take instead, by booking. */
  readonly replacements: ReadonlyMap<string, Replacement>;
}

/** A notice that is older when mail is first set up is old news: it stands on the start page. */
const NEWS_FOR_MS = 7 * 24 * 60 * 60_000;

const TOLD_KINDS: readonly string[] = ['immediateDanger', 'dangerByDate', 'batchQuarantined'];

/** Decides the mails about what is new and remembers what was told, in one transaction. */
@Injectable()
export class UrgentWriter {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly outbox: Outbox,
    private readonly clock: Clock,
  ) {}

  /** Gives how many mails there are of it. What nobody can be told stays untold until somebody can be. */
  write(round: UrgentRound): Promise<number> {
    return this.unitOfWork.run(async (manager) => {
      const at = this.clock.now();
      const { people, unfit, replacements } = round;
      const storeIds = round.storeIds.filter(
        (id) => urgentHearers(people, { matter: 'danger', storeIds: [id] }).size > 0,
      );
      const notices = (await takeUnmailed(manager, { at, storeIds })).filter((notice) => isNews(notice, at));
      const isHeard = (booking: UnfitBooking) => hearersOfBooking(people, booking).size > 0;
      const flags = (await rememberFlags(manager, unfit, { at, isHeard })).map((flag) => ({
        ...flag,
        replacement: replacements.get(bookingKey(flag.booking)),
      }));
      return this.post(manager, { round, news: { notices, flags }, at });
    });
  }

  private async post(
    manager: EntityManager,
    { round, news, at }: { round: UrgentRound; news: News; at: string },
  ): Promise<number> {
    let mails = 0;
    for (const person of round.people) {
      const matters = mattersFor(person, round.people, news);
      const { personId, name, address } = person;
      if (address === null || matters.length === 0) continue;
      const content = urgentContent({ ...round, matters, personName: name });
      const hash = createHash('sha256').update(mattersKey(matters)).digest('hex').slice(0, 32);
      await this.outbox.post(manager, {
        kind: 'urgent',
        subjectKey: `urgent:${personId}:${hash}`,
        ...letter(content, { personId, name, address }),
        at,
      });
      mails += 1;
    }
    return mails;
  }
}

interface News {
  readonly notices: readonly UnmailedNotice[];
  readonly flags: readonly ReplacedFlag[];
}

function mattersFor({ personId }: MailPerson, people: readonly MailPerson[], { notices, flags }: News) {
  return urgentMatters(
    notices.filter(({ storeId }) =>
      urgentHearers(people, { matter: 'danger', storeIds: [storeId] }).has(personId),
    ),
    flags.filter(({ booking }) => hearersOfBooking(people, booking).has(personId)),
  );
}

function hearersOfBooking(people: readonly MailPerson[], booking: UnfitBooking): ReadonlySet<number> {
  return urgentHearers(people, { matter: 'booking', storeIds: [booking.itemStoreId, booking.jobStoreId] });
}

function isNews({ kind, settled, raisedAt }: UnmailedNotice, at: string): boolean {
  return TOLD_KINDS.includes(kind) && !settled && later(raisedAt, NEWS_FOR_MS) > at;
}
