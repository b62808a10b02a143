import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { Ledger } from '../ledger/ledger.service.js';
import { Problem } from '../problem.js';
import { isUniqueViolation } from '../storage/engine-errors.js';
import { Reads } from '../storage/reads.js';
import { SYSTEM_ACTOR, type Actor } from './actor.js';
import { hashPassword } from './password.js';
import type { ChangePersonDto, FirstAccountDto, NewPersonDto, PersonView } from './people.dto.js';
import { PersonEntity } from './person.entity.js';
import { SessionEntity } from './session.entity.js';
import { SetupCode } from './setup-code.js';

/** Accounts and their roles. */
@Injectable()
export class PeopleService {
  constructor(
    private readonly ledger: Ledger,
    private readonly reads: Reads,
    private readonly setupCode: SetupCode,
  ) {}

  /** Whether there is any account yet; without one, the first-run page makes it. */
  async hasAccounts(): Promise<boolean> {
    return this.reads.manager.exists(PersonEntity);
  }

  /** Every account, by name. */
  async list(): Promise<PersonView[]> {
    const people = await this.reads.manager.find(PersonEntity, { order: { name: 'ASC', id: 'ASC' } });
    return people.map(asView);
  }

  /**
   * Makes the first account, a manager and storeman, and spends the setup code.
   * @throws Problem `wrong_setup_code`, `already_set_up`.
   */
  async createFirst(input: FirstAccountDto): Promise<PersonView> {
    if (!this.setupCode.matches(input.setupCode)) {
      throw new Problem('wrong_setup_code', 'The setup code does not match the one that the server printed.');
    }
    const account = { ...input, roles: ['manager' as const, 'storeman' as const] };
    return this.create(SYSTEM_ACTOR, account, async (manager) => {
      if (await manager.exists(PersonEntity))
        throw new Problem('already_set_up', 'The first account was made before.');
    });
  }

  /**
   * Makes an account.
   * @throws Problem `sign_in_name_taken`.
   */
  async create(
    actor: Actor,
    input: NewPersonDto,
    precondition?: (manager: EntityManager) => Promise<void>,
  ): Promise<PersonView> {
    const passwordHash = await hashPassword(input.password);
    const signInName = input.signInName.toLowerCase();
    return this.ledger.change(actor, async (change) => {
      await precondition?.(change.manager);
      const person = {
        name: input.name,
        signInName,
        passwordHash,
        roles: input.roles,
        active: true,
        version: 1,
      };
      const row = change.manager.create(PersonEntity, { ...person, createdAt: change.at });
      await change.manager.insert(PersonEntity, row).catch((error: unknown) => {
        if (!isUniqueViolation(error)) throw error;
        throw new Problem('sign_in_name_taken', `'${signInName}' is the sign-in name of someone else.`);
      });
      const detail = { name: row.name, signInName, roles: row.roles };
      change.note({ action: 'person.created', subjectKind: 'person', subjectId: row.id, detail });
      return asView(row);
    });
  }

  /**
   * Changes roles, password or whether the account is open. Closing it or a new password ends its sessions.
   * @throws Problem `not_found`, `last_manager`.
   */
  async change(actor: Actor, id: number, input: ChangePersonDto): Promise<PersonView> {
    const passwordHash = input.password === undefined ? undefined : await hashPassword(input.password);
    return this.ledger.change(actor, async (change) => {
      await change.lock('person', [id]);
      const person = await change.manager.findOneBy(PersonEntity, { id });
      if (!person) throw new Problem('not_found', `There is no person with the number ${id}.`);
      const next = { roles: input.roles ?? person.roles, active: input.active ?? person.active };
      await refuseWithoutManager(change.manager, { ...next, id });
      const set = { ...next, version: person.version + 1, ...(passwordHash ? { passwordHash } : {}) };
      await change.manager.update(PersonEntity, { id }, set);
      if (passwordHash || !next.active) await change.manager.delete(SessionEntity, { personId: id });
      const detail = { ...next, passwordChanged: passwordHash !== undefined };
      change.note({ action: 'person.changed', subjectKind: 'person', subjectId: id, detail });
      return asView({ ...person, ...next });
    });
  }
}

async function refuseWithoutManager(
  manager: EntityManager,
  next: Pick<PersonEntity, 'id' | 'roles' | 'active'>,
): Promise<void> {
  if (next.active && next.roles.includes('manager')) return;
  const others = await manager.find(PersonEntity, { where: { active: true } });
  if (others.some((person) => person.id !== next.id && person.roles.includes('manager'))) return;
  throw new Problem('last_manager', 'Without a manager nobody could make accounts any more.');
}

function asView({ id, name, signInName, roles, active }: PersonView): PersonView {
  return { id, name, signInName, roles, active };
}
