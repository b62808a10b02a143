import { readFile, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import type { Command } from './command.js';
import { SYSTEM_ACTOR } from '../people/actor.js';
import { faultWords } from '../register/import/finding-words.js';
import { ImportService } from '../register/import/import.service.js';
import { likeFaults, rowWords } from '../register/import/like-faults.js';
import type { Examination } from '../register/import/examine-file.js';

/** Looks at a file, or takes it. A mapping made on the page holds here too. */
export const importCommand: Command = {
  name: 'import',
  usage:
    'import FILE [--take all | --take sound] [--to-mend FILE]    look at a CSV or XLSX file, or take it into the register',
  async run(app, words) {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: { take: { type: 'string' }, 'to-mend': { type: 'string' } },
    });
    const [path, more] = positionals;
    const { take } = values;
    if (
      path === undefined ||
      more !== undefined ||
      (take !== undefined && take !== 'all' && take !== 'sound')
    ) {
      console.error(`npm run tackleroom -- ${importCommand.usage}`);
      return 2;
    }
    const [imports, bytes] = [app.get(ImportService), await readFile(path)];
    if (take === undefined) return sayFindings(await imports.examine(bytes));
    const mode = take === 'all' ? 'allOrNothing' : 'soundRows';
    const { taken, unchanged, faulty, mendFile } = await imports.take(
      SYSTEM_ACTOR,
      { fileName: basename(path), bytes },
      mode,
    );
    console.log(`Taken: ${taken}. In the register already: ${unchanged}. Faulty: ${faulty}.`);
    if (mendFile && values['to-mend'] !== undefined) await writeFile(values['to-mend'], mendFile);
    return faulty === 0 ? 0 : 1;
  },
};

/** Says every fault by row and column, and gives the exit code. */
function sayFindings({ rows, missing }: Examination): number {
  if (missing.length > 0)
    console.log(`No column is known to hold: ${missing.join(', ')}. Say so on the page Import.`);
  for (const { fault, rows: where } of likeFaults(rows.faulty.flatMap(({ faults }) => faults))) {
    const { wrong, remedy } = faultWords(fault);
    console.log(
      `Row ${rowWords(where)}, ${fault.column ?? 'the row'}, '${fault.cell ?? ''}': ${wrong} ${remedy}`,
    );
  }
  console.log(
    `Sound: ${rows.sound.length}. In the register already: ${rows.unchanged.length}. Faulty: ${rows.faulty.length}.`,
  );
  return rows.faulty.length === 0 && missing.length === 0 ? 0 : 1;
}
