import type { EntityManager } from 'typeorm';
import { isOpenAccount } from '../../people/find-people.js';
import { MailChoiceEntity } from '../preferences/mail-choice.entity.js';
import type { MailEntity } from './mail.entity.js';

/**
 * Where a mail goes as of now: its person may have moved since it was decided, and nobody writes to an address that was
 * taken away. Undefined when the account is closed or has no address any more.
 */
export async function addressNow(
  manager: EntityManager,
  { personId, toAddress }: Pick<MailEntity, 'personId' | 'toAddress'>,
): Promise<string | undefined> {
  if (!(await isOpenAccount(manager, personId))) return undefined;
  const choice = await manager.findOneBy(MailChoiceEntity, { personId });
  return choice ? (choice.address ?? undefined) : toAddress;
}
