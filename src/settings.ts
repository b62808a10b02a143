import { isAbsolute, join } from 'node:path';
import { packageRoot } from './package-root.js';

/** What the environment decides, checked. */
export interface Settings {
  readonly host: string;
  readonly port: number;
  /** Absolute path of the folder that holds the embedded database. */
  readonly dataDir: string;
  /** The PostgreSQL to use instead of the embedded database. */
  readonly databaseUrl?: string;
  /** Whether the sign-in page lists the people of the demo scenario. */
  readonly demo: boolean;
}

/** The dependency-injection token of the checked settings. */
export const SETTINGS = Symbol('settings');

/**
 * Reads `HOST`, `PORT`, `DATA_DIR`, `DATABASE_URL` and `TACKLEROOM_DEMO`.
 * @throws Error that lists every bad setting by name, never by value: a database address holds a password.
 */
export function readSettings(environment: Readonly<Record<string, string | undefined>>): Settings {
  const problems: string[] = [];
  const port = Number(environment['PORT'] ?? 3000);
  if (!Number.isInteger(port) || port < 0 || port > 65535) {
    problems.push('PORT: write a whole number from 0 to 65535');
  }
  const databaseUrl = environment['DATABASE_URL'];
  if (databaseUrl && !/^postgres(ql)?:\/\//.test(databaseUrl)) {
    problems.push('DATABASE_URL: write an address that starts with postgresql://, or leave it out');
  }
  if (problems.length > 0) throw new Error(`Settings are wrong:\n  ${problems.join('\n  ')}`);
  const dataDir = environment['DATA_DIR'] || 'data';
  return {
    host: environment['HOST'] || '127.0.0.1',
    port,
    dataDir: isAbsolute(dataDir) ? dataDir : join(packageRoot(), dataDir),
    ...(databaseUrl ? { databaseUrl } : {}),
    demo: environment['TACKLEROOM_DEMO'] === '1',
  };
}
