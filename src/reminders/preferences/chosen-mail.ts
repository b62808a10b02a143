import type { ChosenMail } from '../../web/sentences/mail-words.js';
import { isInCharge, isToldOfDue, type MailPerson } from './mail-person.js';

/** A person's choice with its stores by name, as the sentences about it need it. */
export function chosenMail(
  { address, digest, urgent, storeIds, roles }: MailPerson,
  stores: readonly { readonly id: number; readonly name: string }[],
): ChosenMail {
  const storeNames = storeIds && stores.filter(({ id }) => storeIds.includes(id)).map(({ name }) => name);
  return {
    hasAddress: address !== null,
    digest,
    urgent,
    storeNames,
    isToldOfDue: isToldOfDue(roles),
    isInCharge: isInCharge(roles),
  };
}
