// Starts what was built, and builds it first where the sources are newer: `node run.mjs <serve|demo|command> [arguments]`.
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from './build.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const built = join(root, 'dist', 'src', 'main.js');

const PROGRAMS = {
  serve: { file: built, environment: {} },
  demo: {
    file: built,
    environment: { TACKLEROOM_DEMO: '1' },
  },
  command: { file: join(root, 'dist', 'src', 'commands', 'main.js'), environment: {} },
};

const [, , name, ...rest] = process.argv;
const program = PROGRAMS[name];
if (!program) throw new Error(`Say what to run: ${Object.keys(PROGRAMS).join(', ')}.`);

if (isStale()) {
  console.error('Building …');
  const status = build();
  if (status !== 0) process.exit(status);
}

// The thread pool has to be larger before the process starts: SQLite statements and password hashes share it.
const child = spawn(process.execPath, [program.file, ...rest], {
  cwd: process.cwd(),
  env: { ...process.env, ...program.environment, UV_THREADPOOL_SIZE: process.env.UV_THREADPOOL_SIZE ?? '12' },
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
child.on('exit', (code, signal) => process.exit(signal ? 1 : (code ?? 1)));

function isStale() {
  if (!existsSync(built)) return true;
  const builtAt = statSync(built).mtimeMs;
  return ['src', 'migrations', 'package.json', 'tsconfig.json', 'nest-cli.json'].some(
    (path) => newest(join(root, path)) > builtAt,
  );
}

function newest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((entry) => newest(join(path, entry))));
}
