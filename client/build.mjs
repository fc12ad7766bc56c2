// @ts-check
import { chmod, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import * as esbuild from 'esbuild';
import { besides, coreOptions, fromCore } from './core.mjs';
import { fontsAsBytes } from './fonts.mjs';
import { galleryPage } from './gallery-page.mjs';
import { licenceTexts } from './licences.mjs';
import { noEval } from './no-eval.mjs';
import { wasmAsBytes } from './wasm.mjs';

/**
 * @typedef {object} Bundle
 * @property {string} name
 * @property {string} entry
 * @property {esbuild.BuildOptions} options
 * @property {boolean} shipped it is in the extension
 * @property {true} [onCommandLine] it is in the package that npm installs
 */

const repository = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

/** @type {esbuild.BuildOptions} */
const node = { platform: 'node', format: 'cjs', target: 'node20', plugins: [fontsAsBytes] };
/** @type {esbuild.BuildOptions} */
const browser = {
  platform: 'browser',
  format: 'iife',
  target: 'es2022',
  plugins: [fontsAsBytes],
};
// The web extension host evaluates an extension as a CommonJS module whose only import is `vscode`.
/** @type {esbuild.BuildOptions} */
const webExtension = { ...browser, format: 'cjs', mainFields: ['browser', 'module', 'main'] };
// Mocha's bundle for browsers sets `module.exports` as well, so ours must be the last word.
/** @type {esbuild.BuildOptions} */
const webSuite = {
  ...webExtension,
  format: 'iife',
  globalName: 'suite',
  footer: { js: 'module.exports = suite;' },
};

const noDisk = './server/entry/no-disk.ts';
/** The metrics of the fonts that every PDF reader has: we set with fonts of our own. @type {esbuild.Plugin} */
const noStandardFonts = {
  name: 'no standard fonts',
  setup: ({ onLoad }) =>
    onLoad({ filter: /standard-fonts[/\\](?:Courier|Helvetica|Symbol|Times|Zapf)[^/\\]*\.json$/ }, () => ({
      contents: '""',
      loader: 'json',
    })),
};
/**
 * What writes SVG and PDF, for the servers in node and in a worker and for the command line: it touches nothing of
 * either. Parts that libraries would need for fonts as WOFF2 and for pages of HTML are left out.
 * @type {esbuild.BuildOptions}
 */
const shared = {
  ...browser,
  globalName: 'mahlstickExport',
  footer: {
    js: `if (typeof module === 'object') module.exports = mahlstickExport; else self.mahlstickExport = mahlstickExport;`,
  },
  alias: Object.fromEntries(
    [
      'path',
      'node:path',
      'node:url',
      'fs',
      'image-size',
      'brotli/decompress.js',
      'node-html-better-parser',
    ].map((name) => [name, noDisk]),
  ),
  plugins: [fontsAsBytes, noStandardFonts, fromCore(repository)],
  define: { 'import.meta.url': '"export:"' },
};

/** German sentences, for the servers in node and in a worker. @type {esbuild.BuildOptions} */
const german = {
  ...browser,
  globalName: 'mahlstickGerman',
  footer: {
    js: `if (typeof module === 'object') module.exports = mahlstickGerman; else self.mahlstickGerman = mahlstickGerman;`,
  },
};

/** Gives a thread of node what a bundle takes of a web worker, where it is one. */
const asWebWorker = `if (typeof require === 'function') {
  const { parentPort } = require('node:worker_threads');
  if (parentPort !== null) {
    globalThis.postMessage = (message, transfer) => parentPort.postMessage(message, transfer);
    parentPort.on('message', (data) => globalThis.onmessage({ data }));
  }
}`;

/**
 * What squares up photographs, in threads of node and of a browser: it touches nothing of either. Its decoders ask
 * where they lie, and need not know.
 * @type {esbuild.BuildOptions}
 */
const darkroom = {
  ...browser,
  plugins: [wasmAsBytes],
  banner: { js: asWebWorker },
  logOverride: { 'empty-import-meta': 'silent' },
};

/** For what runs on the core. @type {esbuild.BuildOptions} */
const onCore = { plugins: [fromCore(repository)] };

/** What is loaded later is required: it is CommonJS. */
const requires = { 'dynamic-import': false };

/**
 * The command line: what a command needs is loaded when it is called, so that help and version are there at once.
 * @type {esbuild.BuildOptions}
 */
const commandLine = {
  ...node,
  banner: { js: '#!/usr/bin/env node' },
  supported: requires,
  plugins: [
    besides(repository, {
      'server/entry/node.ts': 'server.node.js',
      'server/entry/renderers.ts': 'export.js',
    }),
    fromCore(repository, {
      loads: true,
      before: ['program', 'plan-commands', 'options', 'distance'].map((name) => `server/cli/${name}.ts`),
    }),
  ],
};

/**
 * The extension on the desktop: the language client is loaded when the server is started.
 * @type {esbuild.BuildOptions}
 */
const desktop = {
  ...node,
  supported: requires,
  plugins: [besides(repository, { 'client/language-client.node.ts': 'language-client.js' })],
};

/** @type {readonly Bundle[]} */
const named = [
  { name: 'extension.node', entry: 'client/extension.node.ts', options: desktop, shipped: true },
  { name: 'language-client', entry: 'client/language-client.node.ts', options: node, shipped: true },
  { name: 'extension.web', entry: 'client/extension.web.ts', options: webExtension, shipped: true },
  {
    name: 'core',
    entry: 'core',
    options: { ...browser, ...coreOptions(repository) },
    shipped: true,
    onCommandLine: true,
  },
  {
    name: 'server.node',
    entry: 'server/entry/node.ts',
    options: node,
    shipped: true,
    onCommandLine: true,
  },
  {
    name: 'features',
    entry: 'server/entry/features.ts',
    options: { ...node, ...onCore, banner: { js: `require('./core.js');` } },
    shipped: true,
    onCommandLine: true,
  },
  { name: 'server.web', entry: 'server/entry/worker.ts', options: { ...browser, ...onCore }, shipped: true },
  { name: 'export', entry: 'server/entry/renderers.ts', options: shared, shipped: true, onCommandLine: true },
  { name: 'german', entry: 'server/entry/german.ts', options: german, shipped: true, onCommandLine: true },
  {
    name: 'photograph',
    entry: 'server/entry/photograph.ts',
    options: darkroom,
    shipped: true,
    onCommandLine: true,
  },
  { name: 'preview', entry: 'client/preview/main.ts', options: browser, shipped: true },
  { name: 'side-by-side', entry: 'client/side-by-side/page/main.ts', options: browser, shipped: true },
  { name: 'markdown', entry: 'client/markdown/main.ts', options: browser, shipped: true },
  {
    name: 'markdown-plans',
    entry: 'client/markdown/plans.ts',
    options: { ...browser, ...onCore },
    shipped: true,
  },
  {
    name: 'mahlstick',
    entry: 'server/cli/main.ts',
    options: commandLine,
    shipped: false,
    onCommandLine: true,
  },
  { name: 'tests/suite.node', entry: 'tests/editor/suite.node.ts', options: node, shipped: false },
  { name: 'tests/suite.web', entry: 'tests/editor/suite.web.ts', options: webSuite, shipped: false },
];

/** Everything that is built: `dist/<name>.js` from one entry. @type {readonly Bundle[]} */
export const bundles = named.map((bundle) => ({
  ...bundle,
  options: { ...bundle.options, plugins: [...(bundle.options.plugins ?? []), noEval] },
}));

/**
 * How a bundle is built.
 * @param {Bundle} bundle
 * @param {boolean} production as for a release: minified, without source maps
 * @returns {esbuild.BuildOptions}
 */
export function optionsOf({ name, entry, options }, production) {
  return {
    entryPoints: { [name]: entry },
    outdir: 'dist',
    bundle: true,
    // `mocha` runs the suites and must be the very copy that the suites import.
    external: ['vscode', '@resvg/resvg-js', ...(options.platform === 'node' ? ['mocha'] : [])],
    minify: production,
    sourcemap: !production,
    metafile: production,
    ...options,
    define: {
      'process.env.NODE_ENV': production ? '"production"' : '"development"',
      ...options.define,
    },
  };
}

/**
 * Bundles into `dist/`; an entry that is missing is an error. A production build writes the licences of what it holds
 * and the page of the extension.
 * @param {object} [how]
 * @param {string} [how.root] the folder that holds the sources and `dist/`; this repository if left out
 * @param {boolean} [how.production] only what strangers are given: minified, without source maps
 * @param {boolean} [how.watch] stay and rebuild what changes
 * @returns {Promise<void>} settles after the first build; rejects if that fails and nothing is watched
 */
export async function build({ root = repository, production = false, watch = false } = {}) {
  const contexts = await Promise.all(
    bundles
      .filter(({ shipped, onCommandLine }) => shipped || onCommandLine || !production)
      .map((bundle) =>
        esbuild.context({
          ...optionsOf(bundle, production),
          absWorkingDir: root,
          logLevel: watch ? 'info' : 'warning',
        }),
      ),
  );
  if (watch) {
    await Promise.all(contexts.map((context) => context.watch()));
    return;
  }
  // All of them, so that one mistake does not hide another.
  const results = await Promise.allSettled(contexts.map((context) => context.rebuild()));
  await Promise.all(contexts.map((context) => context.dispose()));
  const failure = results.find((result) => result.status === 'rejected');
  if (failure !== undefined) throw failure.reason;
  await chmod(path.join(root, 'dist/mahlstick.js'), 0o755);
  if (!production) return;
  const inputs = results.flatMap((result) =>
    result.status === 'fulfilled' ? Object.keys(result.value.metafile?.inputs ?? {}) : [],
  );
  await writeFile(path.join(root, 'dist/licences.txt'), licenceTexts(root, inputs));
  const readme = await readFile(path.join(root, 'README.md'), 'utf8');
  await writeFile(path.join(root, 'dist/README.md'), galleryPage(readme));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { values } = parseArgs({
    options: { root: { type: 'string' }, production: { type: 'boolean' }, watch: { type: 'boolean' } },
  });
  try {
    await build(values);
  } catch {
    // esbuild has shown what is wrong.
    process.exit(1);
  }
}
