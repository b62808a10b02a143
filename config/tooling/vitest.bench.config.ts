import { defineConfig } from 'vitest/config';

/** `npm run bench`: prints times, and is no part of the tests. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  oxc: { decorator: { legacy: true, emitDecoratorMetadata: true } },
  test: { include: ['test/bench/**/*.bench.ts'], maxWorkers: 1 },
});
