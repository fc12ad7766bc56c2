import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['grammar/**/*.test.ts', 'server/**/*.test.ts', 'client/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'tests/editor/**'],
    testTimeout: 120_000,
    // The usual number leaves a core for watching: on two cores half the machine would idle.
    maxWorkers: '100%',
    // Nothing here keeps state between files, and loading the modules once a worker takes a fraction of the time.
    isolate: false,
  },
});
