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
  },
});

const suite = values.extensionTestsPath;
if (typeof suite !== 'string') {
  console.error('code-shim: needs --extensionTestsPath');
  process.exit(2);
}
const host = await startNodeHost({ automation: true });
try {
  const extensions = (values.extensionDevelopmentPath ?? []).map(String);
  const url = host.url(positionals[0], [
    ...extensions.map((folder) => /** @type {const} */ (['extensionDevelopmentPath', host.uri(folder)])),
    ['extensionTestsPath', host.uri(createRequire(import.meta.url).resolve(path.resolve(suite)))],
  ]);
  process.exitCode = await runTestsInPage(url);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
} finally {
  await host.close();
}
