import { afterAll, beforeAll, expect, test } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver-protocol';
import type { SceneResult } from '../../server/language/protocol.js';
import { bareClient } from './clients.js';
import { bundle, startWorker, type Client } from './server.js';

const uri = 'vscode-vfs://github/studio/plan.mahl';

let client: Client;
let end: () => Promise<void>;

beforeAll(async () => {
  const { file, remove } = await bundle('worker');
  const worker = startWorker(file);
  ({ client } = worker);
  end = async () => {
    await worker.stop();
    await remove();
  };
});
afterAll(() => end());

test('the worker answers without a disk: files come from the client', async () => {
  const asked: string[] = [];
  client.connection.onRequest('mahlstick/readFile', (params: { readonly uri: string }) => {
    asked.push(params.uri);
    const text = '<svg xmlns="http://www.w3.org/2000/svg"><rect id="door" width="4" height="3"/></svg>';
    return { ok: true, text };
  });
  await client.initialize(bareClient, { initializationOptions: { readFiles: true } });
  await client.open(uri, 'canvas 40 x 30 cm\nobject door\n  shape from "door.svg"\n  value 2\n');
  await client.diagnostics(uri, 1);
  expect(asked).toEqual(['vscode-vfs://github/studio/door.svg']);
  const params = { textDocument: { uri }, view: 'drawing' };
  const { version, scene } = await client.request<SceneResult>('mahlstick/scene', params);
  expect(version).toBe(1);
  expect(Object.keys(scene.subjects)).toContain('object:door');
});

test('plans that only the client can find and read are renamed in too', async () => {
  const base = 'vscode-vfs://github/studio/base.mahl';
  const plan = 'vscode-vfs://github/studio/heir.mahl';
  client.connection.onRequest('mahlstick/readFile', () => ({ ok: true, text: 'object sky\npath sky\n' }));
  await client.open(plan, 'based on "base.mahl"\nwithout sky\n');
  const edit = await client.request<WorkspaceEdit>('textDocument/rename', {
    textDocument: { uri: plan },
    position: { line: 1, character: 9 },
    newName: 'dusk',
  });
  const lines = Object.entries(edit.changes ?? {}).map(([uri, edits]) => [
    uri,
    edits.map(({ range }) => range.start.line),
  ]);
  expect(Object.fromEntries(lines)).toEqual({ [base]: [0, 1], [plan]: [1] });
  await client.notify('textDocument/didClose', { textDocument: { uri: plan } });
});

test('of a burst of edits the last is the one that counts', async () => {
  const sent = Array.from({ length: 50 }, (_, index) =>
    client.notify('textDocument/didChange', {
      textDocument: { uri, version: index + 2 },
      contentChanges: [{ text: `objekt door${index}` }],
    }),
  );
  await Promise.all(sent);
  expect((await client.diagnostics(uri, 51)).map(({ code }) => code)).toContain('unknown-word');
  expect(client.published.length).toBeLessThan(20);
});
