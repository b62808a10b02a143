import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { badInput } from '../../http/input.js';
import { refuseStale } from '../../http/version.js';
import { Ledger } from '../../ledger/ledger.service.js';
import type { Actor } from '../../people/actor.js';
import { findPeople } from '../../people/find-people.js';
import { Problem } from '../../problem.js';
import { Reads } from '../../storage/reads.js';
import { findStores } from '../../stores/find-store.js';
import { MailChoiceEntity } from './mail-choice.entity.js';
import type { ChangeMailChoiceDto } from './mail-choices.dto.js';
import { mailPerson, type MailPerson } from './mail-person.js';
import { refuseUnheard } from './refuse-unheard.js';

/** Where each person gets mail, and how much of it. */
@Injectable()
export class MailChoices {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
  ) {}

  /** Every account with its choice, by name. Closed accounts are marked as not active. */
  people(): Promise<MailPerson[]> {
    return mailPeople(this.reads.manager);
  }

  /**
   * One person's choice, for that person or a manager.
   * @throws Problem `not_your_role`, `not_found`.
   */
  async of(actor: Actor, personId: number): Promise<MailPerson> {
    refuseOthers(actor, personId);
    return personAmong(await this.people(), personId);
  }

  /**
   * Changes what a person hears. What is left out of the input stays as it is.
   * @throws Problem `not_your_role`, `not_found`, `changed_meanwhile`, `bad_input` of an unknown store,
   * `overdue_unheard` when a store with gear would be left with nobody who hears of its overdue gear by choice.
   */
  async change(
    actor: Actor,
    personId: number,
    { version, input }: { version: number; input: ChangeMailChoiceDto },
  ): Promise<MailPerson> {
    refuseOthers(actor, personId);
    return this.ledger.change(actor, async (change) => {
      await change.lock('person', [personId]);
      // Two who switch off at once must not each count on the other: whoever holds the end of the history is alone.
      await change.lock('ledger_head', [1]);
      const before = await mailPeople(change.manager);
      const person = personAmong(before, personId);
      refuseStale(`The mail of ${person.name}`, { read: version, now: person.version });
      const next = changed(person, input);
      await refuseUnknownStores(change.manager, next.storeIds ?? []);
      const after = before.map((other) => (other.personId === personId ? next : other));
      await refuseUnheard(change.manager, { before, after });
      await write(change.manager, next);
      const { digest, urgent, storeIds, hasAddress } = next;
      // Not the address itself: what stands in the history can never be taken out again.
      const detail = {
        digest,
        urgent,
        storeIds,
        hasAddress,
        addressChanged: next.address !== person.address,
      };
      change.note({ action: 'person.mailChanged', subjectKind: 'person', subjectId: personId, detail });
      return next;
    });
  }
}

async function mailPeople(manager: EntityManager): Promise<MailPerson[]> {
  const people = await findPeople(manager);
  const choices = new Map((await manager.find(MailChoiceEntity)).map((row) => [row.personId, row]));
  return people.map((person) => mailPerson(person, choices.get(person.id)));
}

function personAmong(people: readonly MailPerson[], personId: number): MailPerson {
  const person = people.find((one) => one.personId === personId);
  if (!person) throw new Problem('not_found', `There is no person with the number ${personId}.`);
  return person;
}

function changed(person: MailPerson, input: ChangeMailChoiceDto): MailPerson {
  const {
    address = person.address,
    digest = person.digest,
    urgent = person.urgent,
    storeIds = person.storeIds,
  } = input;
  return {
    ...person,
    address,
    hasAddress: address !== null,
    digest,
    urgent,
    storeIds,
    version: person.version + 1,
  };
}

async function write(manager: EntityManager, next: MailPerson): Promise<void> {
  const { personId, address, digest, urgent, version } = next;
  const storeIds = next.storeIds && [...next.storeIds];
  const set = { address, digest, urgent, storeIds, version };
  if (version === 1) await manager.insert(MailChoiceEntity, { personId, ...set });
  else await manager.update(MailChoiceEntity, { personId }, set);
}

async function refuseUnknownStores(manager: EntityManager, storeIds: readonly number[]): Promise<void> {
  const known = new Set((await findStores(manager)).map(({ id }) => id));
  const unknown = storeIds.find((id) => !known.has(id));
  if (unknown === undefined) return;
  throw badInput([{ field: 'storeIds', message: `there is no store with the number ${unknown}` }]);
}

function refuseOthers(actor: Actor, personId: number): void {
  if (actor.id === personId || actor.roles.includes('manager')) return;
  throw new Problem('not_your_role', "Someone else's mail is for that person or a manager to choose.");
}
