// @ts-check
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/editor/*.e2e.ts'],
    // Each file starts editors of its own, which mostly wait: two of them fill two cores.
    maxWorkers: 3,
    testTimeout: 180_000,
    hookTimeout: 180_000,
  },
});
