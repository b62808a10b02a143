import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';

/** The server as it is shipped, built and in a process of its own: `npm test` builds it first. */
export interface BuiltServer {
  readonly address: string;
  readonly dataDir: string;
  /** The setup code it printed, where it has no account yet. */
  readonly setupCode: string | undefined;
  readonly process: ChildProcess;
  stop(): Promise<void>;
}

/** Starts it on a free port, or on `port`. `dataDir` starts it again on the data of an earlier one, and leaves them in place. */
export async function startBuiltServer(
  options: {
    demo?: boolean;
    dataDir?: string;
    port?: number;
    /** More settings. */
    environment?: Readonly<Record<string, string>>;
  } = {},
): Promise<BuiltServer> {
  const dataDir = options.dataDir ?? mkdtempSync(join(tmpdir(), 'tackleroom-built-'));
  const child = spawn(process.execPath, ['dist/src/main.js'], {
    env: {
      ...process.env,
      PORT: String(options.port ?? 0),
      DATA_DIR: dataDir,
      DATABASE_URL: '',
      TACKLEROOM_DEMO: options.demo ? '1' : '',
      ...options.environment,
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const exited = once(child, 'exit');
  const { address, setupCode } = await readWelcome(child.stdout, !options.demo && !options.dataDir);
  return {
    address,
    dataDir,
    setupCode,
    process: child,
    async stop() {
      child.kill('SIGTERM');
      await exited;
      if (!options.dataDir) rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

/** Reads where the server is from what it prints, and the setup code where it has to print one. */
async function readWelcome(
  output: Readable,
  withSetupCode: boolean,
): Promise<{ address: string; setupCode: string | undefined }> {
  let address: string | undefined;
  for await (const line of createInterface({ input: output })) {
    address ??= /open at (http\S+)/.exec(line)?.[1];
    const setupCode = /setup code: (\S+)/.exec(line)?.[1];
    if (address && (setupCode || !withSetupCode)) return { address, setupCode };
  }
  throw new Error('The built server did not start. Run npm run build first.');
}
