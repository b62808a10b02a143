import type { EntityManager } from 'typeorm';
import { Clock } from '../../src/clock.js';
import type { DigestChoice } from '../../src/rules/reminders/digest-choice.js';
import { addDays, weekday, type Day } from '../../src/rules/calendar/day.js';
import { DigestSweep } from '../../src/reminders/digest/digest-sweep.service.js';
import { DueIndex } from '../../src/reminders/due-index/due-index.service.js';
import { MailEntity } from '../../src/reminders/outbox/mail.entity.js';
import { MailSender } from '../../src/reminders/outbox/mail-sender.service.js';
import { UrgentSweep } from '../../src/reminders/urgent/urgent-sweep.service.js';
import { Reads } from '../../src/storage/reads.js';
import { UnitOfWork } from '../../src/storage/unit-of-work.js';
import type { Settings } from '../../src/settings.js';
import type { Engine } from './engines.js';
import { startGearYard, type GearYard } from './gear-yard.js';

/** The people of a yard by the role that they sign in with. */
export type MailReader = 'storeman' | 'crew' | 'manager' | 'examiner' | 'secondExaminer';

/** They are made in this order. */
const SIGN_IN_NAMES: Readonly<Record<MailReader, string>> = {
  storeman: 'person1',
  crew: 'person2',
  manager: 'person3',
  examiner: 'person4',
  secondExaminer: 'person5',
};

interface Choice {
  readonly address?: string | null;
  readonly digest?: DigestChoice;
  readonly urgent?: boolean;
  readonly storeIds?: readonly number[] | null;
}

/** A yard whose people get mail, on whatever day a test lives through. */
export interface MailYard extends GearYard {
  /** Chooses what someone hears. Unless said otherwise the address is `<reader>@yard.example`. */
  choose(reader: MailReader, choice: Choice): Promise<void>;
  /** Changes when a store wants to hear. */
  remind(storeId: number, rule: object): Promise<void>;
  /** An item in date through a day: at most six months from today. */
  dueOn(tag: string, day: Day, differences?: object): Promise<{ id: number; tag: string }>;
  /** Decides the digests of an instant. Gives how many mails. */
  digests(instant: string): Promise<number>;
  /** Decides the urgent mails of an instant. Gives how many mails. */
  urgent(instant: string): Promise<number>;
  /** Hands over what waits at an instant. */
  deliver(instant: string): Promise<number>;
  /** Writes straight into the tables. */
  write<T>(job: (manager: EntityManager) => Promise<T>): Promise<T>;
  /** The mails to someone, oldest first. */
  mails(reader: MailReader): Promise<MailEntity[]>;
}

/** Starts it on an empty database of the engine. Its mail goes to the local mailbox unless settings say otherwise. */
export async function startMailYard(
  engine: Engine,
  other: Partial<Settings> = { demo: true },
): Promise<MailYard> {
  const yard = await startGearYard(engine, other);
  const { app, manager, examiner } = yard;
  const clock = app.get(Clock);
  const { body: people } = await manager.get('/api/people').expect(200);
  const idOf = (reader: MailReader): number =>
    people.find(({ signInName }: { signInName: string }) => signInName === SIGN_IN_NAMES[reader]).id;
  const change = async (path: string, input: object) => {
    const { headers } = await manager.get(path).expect(200);
    await manager.patch(path).set('if-match', String(headers['etag'])).send(input).expect(200);
  };
  return {
    ...yard,
    choose: (reader, choice) =>
      change(`/api/people/${idOf(reader)}/mail`, {
        address: `${reader}@yard.example`.toLowerCase(),
        ...choice,
      }),
    remind: (storeId, rule) => change(`/api/stores/${storeId}/reminders`, rule),
    async dueOn(tag, day, differences) {
      const item = await yard.newItem({ tag, ...differences });
      const examination = {
        type: 'thoroughExamination',
        doneOn: yard.day(-1),
        nextDueOn: day,
        outcome: 'fit',
        reportNumber: `R-${tag}`,
      };
      await examiner.post(`/api/items/${item.id}/inspections`).send(examination).expect(201);
      return item;
    },
    digests: (instant) =>
      clock.at(instant, async () => {
        await app.get(DueIndex, { strict: false }).refresh();
        return app.get(DigestSweep, { strict: false }).run();
      }),
    urgent: (instant) => clock.at(instant, () => app.get(UrgentSweep, { strict: false }).run()),
    deliver: (instant) => clock.at(instant, () => app.get(MailSender, { strict: false }).sendDue()),
    write: (job) => app.get(UnitOfWork).run(job),
    mails: (reader) =>
      app.get(Reads).manager.find(MailEntity, { where: { personId: idOf(reader) }, order: { id: 'ASC' } }),
  };
}

/** The first such day of the week (1 is Monday) on or after a day. */
export function nextWeekday(from: Day, day: number): Day {
  return addDays(from, (day - weekday(from) + 7) % 7);
}
