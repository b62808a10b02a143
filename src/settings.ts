import { join, resolve } from 'node:path';
import { readMailSettings, type MailSettings } from './mail-settings.js';
import { packageRoot } from './package-root.js';

/** What the environment decides, checked. */
export interface Settings {
  readonly host: string;
  readonly port: number;
  /** Absolute path of the folder that holds the embedded database. */
  readonly dataDir: string;
  /** The PostgreSQL to use instead of the embedded database. */
  readonly databaseUrl?: string;
  /** The address that people reach the server at, without a slash at its end: what the codes on labels lead to. */
  readonly publicUrl?: string;
  /** The mail server that reminders go through; without one no mail is decided on. */
  readonly mail?: MailSettings;
  /** Whether to show the invented scenario, kept in a folder of its own and made afresh at every start. */
  readonly demo: boolean;
}

/** The dependency-injection token of the checked settings. */
export const SETTINGS = Symbol('settings');

/**
 * Reads `HOST`, `PORT`, `DATA_DIR`, `DATABASE_URL`, `PUBLIC_URL`, `TACKLEROOM_DEMO` and those of mail.
 * @throws Error that lists every bad setting by name, never by value: a database address holds a password.
 */
export function readSettings(environment: Readonly<Record<string, string | undefined>>): Settings {
  const port = Number(environment['PORT'] ?? 3000);
  const databaseUrl = environment['DATABASE_URL'] || undefined;
  const publicUrl = environment['PUBLIC_URL']?.replace(/\/+$/, '') || undefined;
  const demo = environment['TACKLEROOM_DEMO'] === '1';
  const { mail, problems: mailProblems } = readMailSettings(environment);
  const problems = [...problemsOf({ port, databaseUrl, publicUrl, demo }), ...mailProblems];
  if (problems.length > 0) throw new Error(`Settings are wrong:\n  ${problems.join('\n  ')}`);
  const dataDir = resolve(packageRoot(), environment['DATA_DIR'] || 'data');
  return {
    host: environment['HOST'] || '127.0.0.1',
    port,
    dataDir: demo ? join(dataDir, 'demo') : dataDir,
    ...(databaseUrl ? { databaseUrl } : {}),
    ...(publicUrl ? { publicUrl } : {}),
    ...(mail ? { mail } : {}),
    demo,
  };
}

function problemsOf(read: {
  port: number;
  databaseUrl: string | undefined;
  publicUrl: string | undefined;
  demo: boolean;
}): string[] {
  const { port, databaseUrl, publicUrl, demo } = read;
  const checks: readonly (readonly [boolean, string])[] = [
    [Number.isInteger(port) && port >= 0 && port <= 65535, 'PORT: write a whole number from 0 to 65535'],
    [
      databaseUrl === undefined || /^postgres(ql)?:\/\//.test(databaseUrl),
      'DATABASE_URL: write an address that starts with postgresql://, or leave it out',
    ],
    [
      publicUrl === undefined || isPlainAddress(publicUrl),
      'PUBLIC_URL: write the address people open, such as http://gear.example:3000, or leave it out',
    ],
    [
      !demo || databaseUrl === undefined,
      'DATABASE_URL: leave it out for the demo, which keeps its invented data apart',
    ],
  ];
  return checks.flatMap(([holds, problem]) => (holds ? [] : [problem]));
}

/** An http address without query, fragment or credentials. */
function isPlainAddress(address: string): boolean {
  if (!/^https?:\/\/[^\s?#@]+$/.test(address)) return false;
  return URL.canParse(address);
}
