import type { EntityManager } from 'typeorm';
import type { PersonView } from './people.dto.js';
import { PersonEntity } from './person.entity.js';

/** Every account as a change sees it, by name, read through the change's own manager. */
export async function findPeople(manager: EntityManager): Promise<PersonView[]> {
  const people = await manager.find(PersonEntity, { order: { name: 'ASC', id: 'ASC' } });
  return people.map(({ id, name, signInName, roles, active }) => ({ id, name, signInName, roles, active }));
}

/** Whether an account is there and open, as a change sees it. */
export async function isOpenAccount(manager: EntityManager, personId: number): Promise<boolean> {
  return manager.existsBy(PersonEntity, { id: personId, active: true });
}
