import { afterEach, describe, expect, it } from 'vitest';
import type { Connection } from 'vscode-languageserver/node';
import type { ServerHost } from '../../server/language/connection.js';
import * as features from '../../server/language/features.js';
import { speak, type Spoken } from './in-process.js';

const uri = 'file:///studio/plan.mahl';
const textDocument = { uri };
const position = { line: 1, character: 8 };
const range = { start: { line: 0, character: 0 }, end: position };
const options = { tabSize: 2, insertSpaces: true };
const plan = { uri, text: 'object tram\n' };
const change = { kind: 'value', subject: 'object:tram', step: 2 };
const at = { textDocument, position };
const empty = { kind: 'full', items: [] };

/** Every request that the server answers: with what it is asked here, and what it answers after a fault of ours. */
const requests: Readonly<Record<string, readonly [params: object, none: unknown]>> = {
  'textDocument/completion': [at, null],
  'textDocument/hover': [at, null],
  'textDocument/definition': [at, null],
  'textDocument/references': [{ ...at, context: { includeDeclaration: true } }, null],
  'textDocument/prepareRename': [at, null],
  'textDocument/rename': [{ ...at, newName: 'bus' }, null],
  'textDocument/documentHighlight': [at, null],
  'textDocument/documentSymbol': [{ textDocument }, null],
  'textDocument/foldingRange': [{ textDocument }, null],
  'textDocument/inlayHint': [{ textDocument, range }, null],
  'textDocument/semanticTokens/full': [{ textDocument }, null],
  'textDocument/semanticTokens/range': [{ textDocument, range }, null],
  'textDocument/semanticTokens/full/delta': [{ textDocument, previousResultId: '1' }, null],
  'textDocument/documentColor': [{ textDocument }, []],
  'textDocument/colorPresentation': [
    { textDocument, range, color: { red: 1, green: 0, blue: 0, alpha: 1 } },
    [],
  ],
  'textDocument/formatting': [{ textDocument, options }, null],
  'textDocument/rangeFormatting': [{ textDocument, range, options }, null],
  'textDocument/onTypeFormatting': [{ ...at, ch: '\n', options }, null],
  'textDocument/selectionRange': [{ textDocument, positions: [position] }, null],
  'textDocument/documentLink': [{ textDocument }, null],
  'textDocument/codeAction': [{ textDocument, range, context: { diagnostics: [] } }, null],
  'textDocument/diagnostic': [{ textDocument }, empty],
  'workspace/symbol': [{ query: '' }, null],
  'workspace/willRenameFiles': [{ files: [{ oldUri: uri, newUri: `${uri}2` }] }, null],
  'mahlstick/scene': [{ textDocument, view: 'drawing' }, null],
  'mahlstick/tryChange': [{ textDocument, view: 'drawing', version: 1, change }, null],
  'mahlstick/writeChange': [{ textDocument, version: 1, change }, null],
  'mahlstick/compare': [{ earlier: plan, later: plan, view: 'drawing' }, null],
  'mahlstick/card': [{ plan, view: 'drawing' }, null],
};

/** Every notification that reaches what reads plans. */
const notifications: Readonly<Record<string, object>> = {
  'textDocument/didOpen': { textDocument: { ...plan, languageId: 'mahl', version: 1 } },
  'textDocument/didChange': { textDocument: { uri, version: 2 }, contentChanges: [{ text: 'object bus\n' }] },
  'textDocument/didSave': { textDocument },
  'textDocument/didClose': { textDocument },
  'workspace/didChangeWatchedFiles': { changes: [{ uri, type: 2 }] },
};

/** Those that the library takes in for us. */
const through: Readonly<Record<string, object>> = {
  'workspace/didChangeWorkspaceFolders': { event: { added: [{ uri: 'file:///a', name: 'a' }], removed: [] } },
  'workspace/didChangeConfiguration': { settings: { mahlstick: { rules: { 'even count': 'off' } } } },
};

/** A server whose features fail while they are told to, and what it has registered. */
async function faultyServer() {
  let isFailing = false;
  const fail = (): never => {
    throw new Error('a fault');
  };
  const registered: string[] = [];
  const host: ServerHost = {
    version: '0',
    features: () => ({
      ...features,
      createLanguageService: (world) =>
        new Proxy(features.createLanguageService(world), {
          get: (service, name) =>
            isFailing ? fail : (service as unknown as Record<string | symbol, unknown>)[name],
        }),
    }),
    exportDrawing: fail,
  };
  const spoken = await speak(host, (connection) => noting(connection, registered));
  await spoken.client.open(uri, plan.text);
  await isAlive(spoken);
  return {
    ...spoken,
    registered,
    failing: (now: boolean) => (isFailing = now),
  };
}

/** The connection, which notes the methods that handlers are registered for. */
function noting(connection: Connection, registered: string[]): Connection {
  return new Proxy(connection, {
    get: (target, name) => {
      const member = (target as unknown as Record<string | symbol, unknown>)[name];
      if (name !== 'onRequest' && name !== 'onNotification') return member;
      return (type: string | { readonly method: string }, ...rest: readonly unknown[]) => {
        registered.push(typeof type === 'string' ? type : type.method);
        return (member as (...words: readonly unknown[]) => unknown)(type, ...rest);
      };
    },
  });
}

let server: Awaited<ReturnType<typeof faultyServer>> | undefined;
afterEach(() => server?.end());

/** It answers what is right again. */
async function isAlive({ client }: Spoken): Promise<void> {
  const symbols = await client.request<{ name: string }[]>('textDocument/documentSymbol', { textDocument });
  expect(symbols.map(({ name }) => name)).toEqual(['tram']);
}

describe('a fault in a feature', () => {
  it('is looked for here in everything that the server answers', async () => {
    server = await faultyServer();
    const known = [...Object.keys(requests), ...Object.keys(notifications), 'mahlstick/export'];
    expect([...server.registered].sort()).toEqual(known.sort());
  });

  it('leaves every request with an empty answer, is logged once, and the server lives', async () => {
    server = await faultyServer();
    const { client, failing } = server;
    for (const [method, [params, none]] of Object.entries(requests)) {
      const told = client.logged.length;
      failing(true);
      for (let time = 0; time < 3; time++) expect(await client.request(method, params), method).toEqual(none);
      failing(false);
      await isAlive(server);
      expect(client.logged.slice(told), method).toEqual([
        expect.stringContaining(`${method} failed: Error: a fault`),
      ]);
    }
  });

  it('makes an export fail in words', async () => {
    server = await faultyServer();
    const { client, failing } = server;
    const params = { textDocument, what: 'drawing', format: 'svg' };
    const refusal = { message: 'The drawing could not be made.' };
    for (const now of [false, true]) {
      failing(now);
      await expect(client.request('mahlstick/export', params)).rejects.toMatchObject(refusal);
      await expect(client.request('mahlstick/export', params)).rejects.toMatchObject(refusal);
    }
    failing(false);
    await isAlive(server);
    expect(client.logged).toHaveLength(2);
  });

  it('costs a notification its effect alone, and is logged once', async () => {
    server = await faultyServer();
    const { client, failing } = server;
    for (const [method, params] of Object.entries({ ...notifications, ...through })) {
      const told = client.logged.length;
      failing(true);
      for (let time = 0; time < 3; time++) await client.notify(method, params);
      // An answer comes after what was sent before it.
      await client.request('textDocument/foldingRange', { textDocument });
      failing(false);
      await isAlive(server);
      const logged = client.logged.slice(told).filter((line) => !line.includes('foldingRange'));
      expect(logged, method).toHaveLength(1);
    }
  });

  it('is survived where what reads plans can’t be loaded at all', async () => {
    const host: ServerHost = {
      version: '0',
      features: () => {
        throw new Error('it is not there');
      },
    };
    const { client, end } = await speak(host);
    try {
      await client.open(uri, plan.text);
      for (const [method, [params, none]] of Object.entries(requests))
        expect(await client.request(method, params), method).toEqual(none);
      const params = { textDocument, what: 'drawing', format: 'svg' };
      await expect(client.request('mahlstick/export', params)).rejects.toMatchObject({ code: -32803 });
      expect(client.logged.length).toBeGreaterThan(0);
      expect(new Set(client.logged).size).toBe(client.logged.length);
    } finally {
      end();
    }
  });
});
