import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { mozJpeg, painted } from '../photographs/made.js';
import { marketPlan } from '../support/market.js';
import { bareClient, fullClient } from './clients.js';
import { bundle, patienceMilliseconds, startServer, type RunningServer } from './server.js';

/** Notes the bundles as they are evaluated, and the threads that are begun. */
const noting = (notes: string): string => `
const { appendFileSync } = require('node:fs');
const { Module } = require('node:module');
const path = require('node:path');
const note = (what) => appendFileSync(${JSON.stringify(notes)}, what + '\\n');
const compile = Module.prototype._compile;
Module.prototype._compile = function (content, file) {
  if (file.startsWith(__dirname)) note(path.basename(file));
  return compile.apply(this, arguments);
};
const threads = require('node:worker_threads');
threads.Worker = class extends threads.Worker {
  constructor(...given) {
    note('a thread');
    super(...given);
  }
};
`;

const uri = 'file:///studio/plan.mahl';
let bundled: Awaited<ReturnType<typeof bundle>>;
let notes: string;
let server: RunningServer;

/** What has been loaded so far, in that order. */
async function loaded(): Promise<readonly string[]> {
  return (await readFile(notes, 'utf8')).split('\n').filter((line) => line !== '');
}

beforeAll(async () => {
  bundled = await bundle('node', true, true);
});
beforeEach(async () => {
  const folder = path.dirname(bundled.file);
  notes = path.join(folder, 'notes.txt');
  const hook = path.join(folder, 'noting.cjs');
  await writeFile(notes, '');
  await writeFile(hook, noting(notes));
  server = startServer(bundled.file, '--stdio', ['--require', hook]);
});
afterEach(() => server.stop());
afterAll(() => bundled.remove());

test('hello is answered by the connection alone, before anything that reads plans is loaded', async () => {
  const { connection } = server.client;
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: null,
    capabilities: fullClient,
    initializationOptions: { rules: { rival: 'off' }, hints: {} },
  });
  expect(await loaded()).toEqual(['server.js']);
});

test('a plan without photographs is read, measured and drawn without decoders, threads and what writes PDF', async () => {
  const { client } = server;
  await client.initialize(bareClient);
  await client.open(uri, marketPlan(30));
  expect((await client.diagnostics(uri, 1)).length).toBeGreaterThan(0);
  const textDocument = { uri };
  expect(await client.request('mahlstick/scene', { textDocument, view: 'drawing' })).not.toBeNull();
  await client.request('textDocument/hover', { textDocument, position: { line: 6, character: 1 } });
  expect(await loaded()).toEqual(['server.js', 'features.js', 'core.js']);
});

test('a drawing that is taken out loads what writes it', async () => {
  const { client } = server;
  await client.initialize(bareClient);
  await client.open(uri, 'canvas 40 x 30 cm\n');
  await client.request('mahlstick/export', { textDocument: { uri }, what: 'drawing', format: 'svg' });
  expect(await loaded()).toEqual(['server.js', 'features.js', 'core.js', 'export.js']);
});

test('the first photograph begins the thread that decodes it', async () => {
  const { client } = server;
  const folder = path.dirname(bundled.file);
  await writeFile(path.join(folder, 'start.jpg'), await mozJpeg(painted(120, 90, () => [90, 90, 90])));
  await client.initialize(bareClient);
  const sitting = 'sitting "Start" on 2026-05-01\n  photo "start.jpg"\n';
  const plan = pathToFileURL(path.join(folder, 'plan.mahl')).href;
  await client.open(plan, `canvas 40 x 30 cm\n${sitting}`);
  await expect
    .poll(loaded, { timeout: patienceMilliseconds })
    .toEqual(['server.js', 'features.js', 'core.js', 'a thread', 'photograph.js']);
});
