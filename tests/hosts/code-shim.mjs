#!/usr/bin/env node
// @ts-check
// Stands in for the program of the desktop VS Code: takes the arguments that @vscode/test-electron passes, runs the
// extension tests in a node extension host behind a headless browser, and exits with their code.
import { createRequire } from 'node:module';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { runTestsInPage } from './automation.mjs';
import { startNodeHost } from './node-host.mjs';

const { values, positionals } = parseArgs({
  strict: false,
  allowPositionals: true,
  options: {
    extensionDevelopmentPath: { type: 'string', multiple: true },
    extensionTestsPath: { type: 'string' },
    'user-data-dir': { type: 'string' },
    'extensions-dir': { type: 'string' },
  },
});

/** @param {unknown} value */
const text = (value) => (typeof value === 'string' ? value : undefined);
const suite = text(values.extensionTestsPath);
if (suite === undefined) {
  console.error('code-shim: needs --extensionTestsPath');
  process.exit(2);
}
try {
  const userData = text(values['user-data-dir']);
  const extensions = text(values['extensions-dir']);
  const host = await startNodeHost({
    automation: true,
    ...(userData === undefined ? {} : { userData }),
    ...(extensions === undefined ? {} : { extensions }),
  });
  const extensionPaths = (values.extensionDevelopmentPath ?? []).map(String);
  const url = host.url(positionals[0], [
    ...extensionPaths.map((folder) => /** @type {const} */ (['extensionDevelopmentPath', host.uri(folder)])),
    ['extensionTestsPath', host.uri(createRequire(import.meta.url).resolve(path.resolve(suite)))],
  ]);
  const code = await runTestsInPage(url, Number(process.env['MAHLSTICK_TEST_LIMIT_MS'] ?? 300_000));
  await host.close();
  process.exit(code);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
