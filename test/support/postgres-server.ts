import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the test PostgreSQL without a database name: `postgresql://…:port`. */
    postgresUrl: string;
  }
}

/** Starts one real PostgreSQL for the whole run; every test opens a database of its own in it. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const script = new URL('./postgres-process.mjs', import.meta.url).pathname;
  const server = spawn(process.execPath, [script], { stdio: ['pipe', 'pipe', 'inherit'] });
  const ended = once(server, 'exit');
  const [address] = (await Promise.race([
    once(createInterface({ input: server.stdout }), 'line'),
    ended.then(() => Promise.reject(new Error('The test PostgreSQL did not start.'))),
  ])) as [string];
  project.provide('postgresUrl', address);
  return async () => {
    server.stdin.end();
    await ended;
  };
}
