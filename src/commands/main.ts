import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import { AppModule } from '../app.module.js';
import { Problem, PROBLEMS } from '../problem.js';
import { readSettings } from '../settings.js';
import type { Command } from './command.js';
import { exportCommand } from './export.command.js';
import { importCommand } from './import.command.js';
import { userCommand } from './user.command.js';
import { verifyCommand } from './verify.command.js';

const COMMANDS: readonly Command[] = [importCommand, exportCommand, verifyCommand, userCommand];

/** Runs one command of `npm run tackleroom -- <command>` on the database that the settings name. */
async function main([name, ...words]: readonly string[]): Promise<number> {
  const command = COMMANDS.find((known) => known.name === name);
  if (!command) {
    console.error(
      `Say what to do:\n${COMMANDS.map(({ usage }) => `  npm run tackleroom -- ${usage}`).join('\n')}`,
    );
    return 2;
  }
  const app = await NestFactory.createApplicationContext(AppModule.forSettings(readSettings(process.env)), {
    logger: false,
    abortOnError: false,
  });
  try {
    return await command.run(app, words);
  } finally {
    await app.close();
  }
}

function say(error: unknown): void {
  if (error instanceof Problem) console.error(`${error.message}\n${PROBLEMS[error.code].next}`);
  else console.error(error instanceof Error ? error.message : error);
}

main(process.argv.slice(2)).then(
  (code) => (process.exitCode = code),
  (error: unknown) => {
    say(error);
    process.exitCode = 1;
  },
);
