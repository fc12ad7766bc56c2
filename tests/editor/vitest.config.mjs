// @ts-check
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/editor/*.e2e.ts', 'tests/shipped/*.e2e.ts'],
    setupFiles: ['tests/editor/failed.ts'],
    // Each file starts editors of its own, which keep a core busy: more than two only wait for each other.
    maxWorkers: 2,
    // A window that one file has done with serves the next.
    isolate: false,
    testTimeout: 180_000,
    hookTimeout: 180_000,
  },
});
