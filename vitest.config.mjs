import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/** Fonts are imported as their bytes, as the build does it. @type {import('vite').Plugin} */
const fontsAsBytes = {
  name: 'fonts as bytes',
  enforce: 'pre',
  load: (id) =>
    id.endsWith('.woff')
      ? `export default Uint8Array.from(atob('${readFileSync(id, 'base64')}'), (byte) => byte.charCodeAt(0));`
      : undefined,
};

export default defineConfig({
  plugins: [fontsAsBytes],
  test: {
    server: { deps: { inline: [/\.woff$/] } },
    include: ['grammar/**/*.test.ts', 'server/**/*.test.ts', 'client/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'tests/editor/**'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // The usual number leaves a core for watching: on two cores half the machine would idle.
    maxWorkers: '100%',
    // Nothing here keeps state between files, and loading the modules once a worker takes a fraction of the time.
    isolate: false,
  },
});
