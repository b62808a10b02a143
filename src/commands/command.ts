import type { INestApplicationContext } from '@nestjs/common';

/** One command of the command line. */
export interface Command {
  readonly name: string;
  /** How to type it, after `npm run tackleroom --`. */
  readonly usage: string;
  /** Does it with the words typed after its name. Gives the exit code: 0 when all is well. */
  run(app: INestApplicationContext, words: readonly string[]): Promise<number>;
}
