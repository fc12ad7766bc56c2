// @ts-check
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import * as esbuild from 'esbuild';
import { fontsAsBytes } from '../../client/fonts.mjs';
import { wasmAsBytes } from '../../client/wasm.mjs';

const root = path.resolve(import.meta.dirname, '../..');

/** What is bundled still asks where its source lies, to find examples beside it. @type {esbuild.Plugin} */
const ownFolders = {
  name: 'own folders',
  setup: ({ onLoad }) =>
    onLoad({ filter: /[/\\]tests[/\\].*\.ts$/ }, ({ path: file }) => ({
      contents: readFileSync(file, 'utf8').replaceAll(
        'import.meta.dirname',
        JSON.stringify(path.dirname(file)),
      ),
      loader: 'ts',
    })),
};

/**
 * Bundles what looks for faults, and the command that has it look, into a folder of its own within the repository.
 * @returns {Promise<{ readonly child: string; readonly command: string; readonly memory: string; readonly remove: () =>
 *   void }>}
 */
export async function bundleFuzzing() {
  mkdirSync(path.join(root, 'artefacts'), { recursive: true });
  const folder = mkdtempSync(path.join(root, 'artefacts', 'fuzz-'));
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: ['tests/fuzz/child.ts', 'tests/fuzz/command.ts', 'tests/fuzz/memory.ts'],
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    // Libraries of CommonJS ask for each other by `require`.
    banner: {
      js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
    },
    external: ['esbuild', '@resvg/resvg-js', 'pdfjs-dist', 'vitest'],
    sourcemap: 'inline',
    sourcesContent: false,
    plugins: [fontsAsBytes, wasmAsBytes, ownFolders],
    logLevel: 'error',
  });
  return {
    child: path.join(folder, 'child.mjs'),
    command: path.join(folder, 'command.mjs'),
    memory: path.join(folder, 'memory.mjs'),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
