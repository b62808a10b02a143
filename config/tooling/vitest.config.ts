import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  oxc: { decorator: { legacy: true, emitDecoratorMetadata: true } },
  test: {
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    allowOnly: false,
    // A condition is waited for, however busy the machine is.
    expect: { requireAssertions: true, poll: { timeout: 20_000 } },
    testTimeout: 30_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    globalSetup: 'test/support/postgres-server.ts',
  },
});
