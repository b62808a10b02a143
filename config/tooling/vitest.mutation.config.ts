import { configDefaults, defineConfig } from 'vitest/config';

/** What `npm run mutate` runs against each mutant: the tests of the rules, but for those that take seconds. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    include: ['test/rules/**/*.test.ts'],
    exclude: [...configDefaults.exclude, 'test/rules/allocation-highs.test.ts'],
    allowOnly: false,
    expect: { requireAssertions: true },
    testTimeout: 30_000,
    // The rules keep no state, so one process may load them once for all files: twice as quick.
    isolate: false,
  },
});
