// Builds everything that ships: the server, then the scripts of the phone page and its service worker, in dist/.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const modules = join(root, 'node_modules');

const STEPS = [
  [join(modules, '@nestjs', 'cli', 'bin', 'nest.js'), 'build'],
  [join(modules, 'typescript', 'bin', 'tsc'), '-p', 'src/web/phone/client'],
  [join(modules, 'typescript', 'bin', 'tsc'), '-p', 'src/web/phone/worker'],
];

/** Runs the steps in turn; gives the exit status of the first that fails, or 0. */
export function build() {
  for (const step of STEPS) {
    const { status } = spawnSync(process.execPath, step, {
      cwd: root,
      stdio: ['ignore', 'inherit', 'inherit'],
    });
    if (status !== 0) return status ?? 1;
  }
  return 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exit(build());
