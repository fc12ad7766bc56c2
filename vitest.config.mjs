import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';
import { unpackedFont } from './client/fonts.mjs';

/** Fonts are imported as their bytes, as the build does it. @type {import('vite').Plugin} */
const fonts = {
  name: 'fonts as bytes',
  enforce: 'pre',
  load: (id) =>
    id.endsWith('.woff')
      ? `export default Uint8Array.from(atob('${unpackedFont(readFileSync(id)).toString('base64')}'), (byte) => byte.charCodeAt(0));`
      : undefined,
};

/** Modules of WebAssembly are, too. @type {import('vite').Plugin} */
const wasm = {
  name: 'wasm as bytes',
  enforce: 'pre',
  load: (id) =>
    id.endsWith('.wasm?bytes')
      ? `export default Uint8Array.from(atob('${readFileSync(id.replace(/\?bytes$/, '')).toString('base64')}'), (byte) => byte.charCodeAt(0));`
      : undefined,
};

export default defineConfig({
  plugins: [fonts, wasm],
  test: {
    server: { deps: { inline: [/\.woff$/, /\.wasm\?bytes$/] } },
    include: ['grammar/**/*.test.ts', 'server/**/*.test.ts', 'client/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'tests/editor/**'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // The usual number leaves a core for watching: on two cores half the machine would idle.
    maxWorkers: '100%',
    // Nothing here keeps state between files, and loading the modules once a worker takes a fraction of the time.
    isolate: false,
    // What tests make lives shortly, and much of the time would go into looking what of it still does.
    execArgv: ['--max-semi-space-size=64'],
  },
});
