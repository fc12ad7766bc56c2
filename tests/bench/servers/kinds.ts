import { readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { peerFile } from '../peers.js';
import type { ServerKind } from './server.js';

/** How long a server waits after a change, as its own source says. */
function waitIn(file: string): number {
  const [, wait] = /validationDelayMs = (\d+)/.exec(readFileSync(file, 'utf8')) ?? [];
  if (wait === undefined) throw new Error(`${file} does not say how long it waits`);
  return Number(wait);
}

export function cssServer(): ServerKind {
  return extracted('css');
}

export function jsonServer(): ServerKind {
  return extracted('json');
}

function extracted(language: 'css' | 'json'): ServerKind {
  const folder = peerFile('vscode-langservers-extracted');
  return {
    name: `${language} server`,
    language,
    command: [process.execPath, path.join(folder, 'bin', `vscode-${language}-language-server`), '--stdio'],
    waits: waitIn(path.join(folder, 'lib', `${language}-language-server/utils/validation.js`)),
    settings: { [language]: { validate: true } },
  };
}

export function yamlServer(): ServerKind {
  const folder = peerFile('yaml-language-server');
  return {
    name: 'yaml server',
    language: 'yaml',
    command: [process.execPath, path.join(folder, 'bin/yaml-language-server'), '--stdio'],
    waits: waitIn(path.join(folder, 'out/server/src/yamlSettings.js')),
    settings: { yaml: { validate: true, schemaStore: { enable: false } } },
  };
}

/** Servers that others have made. */
export function peerServers(): readonly ServerKind[] {
  return [cssServer(), jsonServer(), yamlServer()];
}

/** Ours, as it is packaged. */
export function ourServer(): ServerKind {
  const bundle = process.env['BENCH_SERVER'];
  if (bundle === undefined) throw new Error('BENCH_SERVER names no bundle of the server');
  return {
    name: 'mahlstick',
    language: 'mahl',
    command: [process.execPath, bundle, '--stdio'],
    waits: 0,
    settings: {},
  };
}
