import { writeFile } from 'node:fs/promises';
import type { Command } from './command.js';
import { ExportService } from '../register/export/export.service.js';

/** Writes the register to a file; its name says whether as CSV or XLSX. */
export const exportCommand: Command = {
  name: 'export',
  usage: 'export FILE    write the register to FILE, whose name ends in .csv or .xlsx',
  async run(app, [path, ...more]) {
    const type = /\.(csv|xlsx)$/i.exec(path ?? '')?.[1]?.toLowerCase();
    if (path === undefined || type === undefined || more.length > 0) {
      console.error(`npm run tackleroom -- ${exportCommand.usage}`);
      return 2;
    }
    const exports = app.get(ExportService);
    await writeFile(path, type === 'csv' ? await exports.csv() : await exports.xlsx());
    console.log(`The register is in ${path}.`);
    return 0;
  },
};
