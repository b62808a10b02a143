import { readInput } from '../../http/input.js';
import { formNumbers } from './form-numbers.js';
import { MailChoiceFormDto, type ChangeMailChoiceDto } from './mail-choices.dto.js';

/**
 * The page's fields as a change. A blank address is none and an absent tick is no; the stores that are ticked count
 * only where 'some' is chosen.
 * @throws Problem `bad_input`.
 */
export async function readChoiceForm(
  form: Readonly<Record<string, unknown>>,
): Promise<{ version: number; input: ChangeMailChoiceDto }> {
  const { storeIds, ...rest } = form;
  const fields = {
    ...rest,
    address: form['address'] ?? null,
    urgent: form['urgent'] === 'true',
    ...(form['stores'] === 'some' ? { storeIds: formNumbers(storeIds) } : {}),
    ...(form['stores'] === 'all' ? { storeIds: null } : {}),
  };
  const { version, stores: _stores, ...input } = await readInput(MailChoiceFormDto, fields);
  return { version, input };
}
