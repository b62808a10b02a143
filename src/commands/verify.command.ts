import { createWriteStream } from 'node:fs';
import { once } from 'node:events';
import { parseArgs } from 'node:util';
import { Ledger } from '../ledger/ledger.service.js';
import type { Command } from './command.js';

/** Checks the whole history, and writes it out for a check with other tools. */
export const verifyCommand: Command = {
  name: 'verify',
  usage: 'verify [--export FILE]    check the ledger; write its entries to FILE, one JSON object a line',
  async run(app, words) {
    const { values } = parseArgs({ args: [...words], options: { export: { type: 'string' } } });
    const ledger = app.get(Ledger);
    if (values.export) await writeEntries(ledger, values.export);
    const { entries, head, fault } = await ledger.verify();
    if (fault) {
      console.error(`Entry ${fault.number} is wrong (${fault.fault}). Keep a copy of the database as it is.`);
      return 1;
    }
    console.log(`All ${entries} entries hold. Newest fingerprint: ${head}`);
    return 0;
  },
};

async function writeEntries(ledger: Ledger, path: string): Promise<void> {
  const file = createWriteStream(path);
  for await (const entry of ledger.entriesInOrder()) {
    if (!file.write(`${JSON.stringify(entry)}\n`)) await once(file, 'drain');
  }
  file.end();
  await once(file, 'finish');
}
