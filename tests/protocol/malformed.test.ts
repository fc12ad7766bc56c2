import { beforeAll, expect, test } from 'vitest';
import type { InitializeResult } from 'vscode-languageserver-protocol';
import { bundledServer } from './bundled.js';
import type { RunningServer } from './server.js';

const uri = 'file:///studio/plan.mahl';

const start = bundledServer('file');
let server: RunningServer;

beforeAll(async () => {
  server = start();
  await server.client.initialize({});
  await server.client.open(uri, 'object tram\n');
});

/** All these tests speak to one server, which must outlive them. */
async function isAlive(): Promise<void> {
  const { client } = server;
  const symbols = await client.request<{ name: string }[]>('textDocument/documentSymbol', {
    textDocument: { uri },
  });
  expect(symbols.map(({ name }) => name)).toEqual(['tram']);
}

test('a request before initialize is refused as such, and initialize may follow', async () => {
  const early = start();
  try {
    await expect(early.client.request('textDocument/hover', {})).rejects.toMatchObject({ code: -32002 });
    await early.client.open(uri, 'object tram');
    expect((await early.client.initialize({})).serverInfo?.name).toBe('Mahlstick');
  } finally {
    await early.stop();
  }
});

test.each([
  ['no capabilities', { processId: null, rootUri: null }],
  ['capabilities that are null', { processId: null, rootUri: null, capabilities: null }],
  ['nothing at all', undefined],
])('an initialize with %s is that of a client that offers nothing', async (_, params) => {
  const { client } = start();
  const { capabilities } = await client.request<InitializeResult>('initialize', params);
  expect(capabilities).toMatchObject({ hoverProvider: true, renameProvider: true });
  await client.notify('initialized', {});
  await client.open(uri, 'objekt tram');
  expect((await client.diagnostics(uri, 1)).map(({ code }) => code)).toContain('unknown-word');
});

test.each([null, undefined])('an edit whose version is %s is of a newer one', async (version) => {
  const { client } = start();
  await client.initialize({});
  await client.open(uri, 'object tram', 4);
  await client.diagnostics(uri, 4);
  await client.notify('textDocument/didChange', {
    textDocument: { uri, version },
    contentChanges: [{ text: 'objekt tram' }],
  });
  expect((await client.diagnostics(uri, 5)).map(({ code }) => code)).toContain('unknown-word');
  expect(client.logged).toEqual([]);
});

test('a method that nobody knows', async () => {
  await expect(server.client.request('textDocument/nonsense', {})).rejects.toMatchObject({ code: -32601 });
  await server.client.notify('textDocument/didNonsense', {});
  await isAlive();
});

const methods = [
  'textDocument/completion',
  'textDocument/hover',
  'textDocument/definition',
  'textDocument/documentHighlight',
  'textDocument/documentSymbol',
  'textDocument/foldingRange',
  'textDocument/documentColor',
  'textDocument/colorPresentation',
  'textDocument/formatting',
  'textDocument/rangeFormatting',
  'textDocument/codeAction',
  'textDocument/references',
  'textDocument/prepareRename',
  'textDocument/rename',
  'textDocument/semanticTokens/full',
  'textDocument/semanticTokens/range',
  'textDocument/semanticTokens/full/delta',
  'textDocument/inlayHint',
  'textDocument/diagnostic',
  'textDocument/selectionRange',
  'textDocument/documentLink',
  'textDocument/onTypeFormatting',
  'workspace/symbol',
  'workspace/willRenameFiles',
  'mahlstick/scene',
  'mahlstick/tryChange',
  'mahlstick/writeChange',
];

test.each(methods)('%s with parameters of the wrong form', async (method) => {
  const wrong = [{}, { textDocument: null }, { textDocument: { uri: 7 } }, [1, 2]];
  for (const params of wrong) {
    await expect(server.client.request(method, params)).rejects.toMatchObject({ code: -32602 });
  }
  await isAlive();
});

test('positions that are none', async () => {
  for (const position of [null, { line: 'a', character: 0 }, { line: 0.5, character: 0 }, { line: 0 }]) {
    const params = { textDocument: { uri }, position };
    await expect(server.client.request('textDocument/hover', params)).rejects.toMatchObject({ code: -32602 });
  }
  await isAlive();
});

test('positions far outside the text', async () => {
  const far = { line: 1_000_000, character: 1_000_000 };
  for (const position of [far, { line: 0, character: 9_999 }, { line: -3, character: -3 }]) {
    const params = { textDocument: { uri }, position };
    for (const method of methods.slice(0, 4)) await server.client.request(method, params);
  }
  const range = { start: { line: 0, character: 0 }, end: far };
  const options = { tabSize: 2, insertSpaces: true };
  await server.client.request('textDocument/rangeFormatting', { textDocument: { uri }, range, options });
  await server.client.request('textDocument/codeAction', {
    textDocument: { uri },
    range,
    context: { diagnostics: [] },
  });
  await isAlive();
});

test('documents that were never opened', async () => {
  const textDocument = { uri: 'file:///studio/other.mahl' };
  const position = { line: 0, character: 0 };
  expect(await server.client.request('textDocument/completion', { textDocument, position })).toEqual([]);
  expect(await server.client.request('textDocument/hover', { textDocument, position })).toBeNull();
  expect(await server.client.request('mahlstick/scene', { textDocument, view: 'drawing' })).toBeNull();
  await server.client.notify('textDocument/didChange', {
    textDocument: { ...textDocument, version: 2 },
    contentChanges: [{ text: 'object wall' }],
  });
  await server.client.notify('textDocument/didClose', { textDocument });
  await isAlive();
});

test('a view that does not exist', async () => {
  const params = { textDocument: { uri }, view: 'aquarium' };
  await expect(server.client.request('mahlstick/scene', params)).rejects.toMatchObject({ code: -32602 });
});

test.each([0, -3_000, 1e9, 'far', null])('a squint from %j', async (distanceMillimetres) => {
  const params = { textDocument: { uri }, view: 'squint', distanceMillimetres };
  await expect(server.client.request('mahlstick/scene', params)).rejects.toMatchObject({ code: -32602 });
});

test('a sheet that is narrow in words', async () => {
  const params = { textDocument: { uri }, view: 'drawing', isNarrow: 'very' };
  await expect(server.client.request('mahlstick/scene', params)).rejects.toMatchObject({ code: -32602 });
});

test('notifications of the wrong form are logged once and change nothing', async () => {
  const { client } = server;
  const didChange = 'textDocument/didChange';
  await client.notify('textDocument/didOpen', { textDocument: { uri: 'file:///a.mahl' } });
  await client.notify(didChange, { textDocument: { uri, version: 2 }, contentChanges: 'all' });
  await client.notify(didChange, {
    textDocument: { uri, version: 2 },
    contentChanges: [{ range: {}, text: 'x' }],
  });
  await client.notify('workspace/didChangeWatchedFiles', { changes: [null] });
  await client.notify('textDocument/didSave', {});
  await isAlive();
  expect(client.logged.length).toBeGreaterThan(0);
  const told = client.logged.length;
  await client.notify('textDocument/didOpen', { textDocument: { uri: 'file:///a.mahl' } });
  await isAlive();
  expect(client.logged).toHaveLength(told);
});

test('an edit far outside the text changes its end', async () => {
  const far = { line: 90, character: 90 };
  await server.client.notify('textDocument/didChange', {
    textDocument: { uri, version: 2 },
    contentChanges: [{ range: { start: far, end: far }, text: '// the end' }],
  });
  await isAlive();
});

test('a frame that holds no JSON', async () => {
  const { stdin } = server.process;
  stdin?.write('Content-Length: 7\r\n\r\n{"a":,}');
  stdin?.write('Content-Length: 4\r\n\r\nnull');
  stdin?.write('Content-Length: 2\r\n\r\n[]');
  await isAlive();
});
