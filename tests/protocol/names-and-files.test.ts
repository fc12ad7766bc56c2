import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type {
  DocumentLink,
  InlayHint,
  Location,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
  SymbolInformation,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { bundledServer } from './bundled.js';
import { bareClient, fullClient } from './clients.js';
import { within } from './server.js';

const text = `based on "base.mahl"
canvas 40 x 30 cm
focus upper right
object tram
  shape from "tram.svg" part "door"
  value 2
path tram, sky
`;
const baseText = 'object sky\n  shape rectangle (0, 0) to (40, 10)\npath sky\n';
const svg = '<svg xmlns="http://www.w3.org/2000/svg"><rect id="door" width="4" height="3"/></svg>';

const start = bundledServer();
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'mahlstick-names-'));
  await writeFile(path.join(folder, 'base.mahl'), baseText);
  await writeFile(path.join(folder, 'heir.mahl'), 'based on "plan.mahl"\npath sky, tram\n');
  await writeFile(path.join(folder, 'tram.svg'), svg);
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).href;
const document = () => ({ textDocument: { uri: uriOf('plan.mahl') } });
const at = (line: number, character: number) => ({ ...document(), position: { line, character } });
const whole = { start: { line: 0, character: 0 }, end: { line: 7, character: 0 } };

/** Which lines of which files are edited to what. */
function edited(edit: WorkspaceEdit | null): readonly string[] {
  const changes = [
    ...Object.entries(edit?.changes ?? {}),
    ...(edit?.documentChanges ?? []).flatMap((change) =>
      'textDocument' in change ? [[change.textDocument.uri, change.edits] as const] : [],
    ),
  ];
  return changes
    .flatMap(([uri, edits]) =>
      edits.map(
        (one) => `${path.basename(uri)}:${one.range.start.line} ${'newText' in one ? one.newText : ''}`,
      ),
    )
    .sort();
}

describe.each([
  ['a client that offers nothing', bareClient],
  ['a client that offers everything', fullClient],
])('%s', (_, capabilities) => {
  const full = capabilities === fullClient;

  test('finds and renames beyond the plan that is open', async () => {
    const { client } = start();
    client.connection.onRequest('client/registerCapability', () => null);
    const shown: unknown[] = [];
    client.connection.onNotification('window/showMessage', (params: unknown) => {
      shown.push(params);
    });
    const { capabilities: offered } = await client.initialize(capabilities, {
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'studio' }],
    });
    expect(offered.renameProvider).toEqual(full ? { prepareProvider: true } : true);
    expect(offered.workspace?.fileOperations !== undefined).toBe(full);
    await client.open(uriOf('plan.mahl'), text);

    const places = await client.request<Location[]>('textDocument/references', {
      ...at(6, 12),
      context: { includeDeclaration: true },
    });
    expect(places.map(({ uri, range }) => `${path.basename(uri)}:${range.start.line}`).sort()).toEqual([
      'base.mahl:0',
      'base.mahl:2',
      'heir.mahl:1',
      'plan.mahl:6',
    ]);
    const prepared = await client.request('textDocument/prepareRename', at(6, 12));
    expect(prepared).toMatchObject({ placeholder: 'sky' });
    const edit = await client.request<WorkspaceEdit>('textDocument/rename', {
      ...at(6, 12),
      newName: 'dusk',
    });
    expect(edited(edit)).toEqual([
      'base.mahl:0 dusk',
      'base.mahl:2 dusk',
      'heir.mahl:1 dusk',
      'plan.mahl:6 dusk',
    ]);
    expect('documentChanges' in edit).toBe(full);
    const part = await client.request<WorkspaceEdit>('textDocument/rename', {
      ...at(4, 30),
      newName: 'gate',
    });
    expect(edited(part)).toEqual(['plan.mahl:4 gate', 'tram.svg:0 gate']);
    await expect(
      client.request('textDocument/rename', { ...at(6, 12), newName: 'tram' }),
    ).rejects.toMatchObject({
      message: 'Line 4 has the object “tram” already.',
    });

    const moved = await client.request<WorkspaceEdit>('workspace/willRenameFiles', {
      files: [{ oldUri: uriOf('tram.svg'), newUri: uriOf('parts/tram.svg') }],
    });
    expect(edited(moved)).toEqual(['plan.mahl:4 parts/tram.svg']);
    const symbols = await client.request<SymbolInformation[]>('workspace/symbol', { query: 'sk' });
    expect(symbols.map(({ name, containerName }) => `${name} in ${containerName}`)).toEqual([
      'sky in base.mahl',
    ]);

    const links = await client.request<DocumentLink[]>('textDocument/documentLink', document());
    expect(links.map(({ target = '' }) => path.basename(target))).toEqual(['base.mahl', 'tram.svg']);
    expect(links.every(({ tooltip }) => tooltip !== undefined)).toBe(full);
    expect([...client.logged, ...shown]).toEqual([]);
  });

  test('is answered about words and lines', async () => {
    const { client } = start();
    client.connection.onRequest('client/registerCapability', () => null);
    const { capabilities: offered } = await client.initialize(capabilities);
    expect(offered.semanticTokensProvider !== undefined).toBe(full);
    expect(offered.inlayHintProvider !== undefined).toBe(full);
    await client.open(uriOf('plan.mahl'), text);

    const tokens = await client.request<SemanticTokens>('textDocument/semanticTokens/full', document());
    expect(tokens.data.length % 5).toBe(0);
    const delta = await client.request<SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
      ...document(),
      previousResultId: tokens.resultId,
    });
    expect(delta.edits).toEqual([]);
    const hints = await client.request<InlayHint[]>('textDocument/inlayHint', {
      ...document(),
      range: whole,
    });
    expect(hints.some(({ position }) => position.line === 2)).toBe(true);
    const [selection] = await client.request<SelectionRange[]>('textDocument/selectionRange', {
      ...document(),
      positions: [{ line: 5, character: 8 }],
    });
    expect(selection?.parent?.range).toEqual({
      start: { line: 5, character: 2 },
      end: { line: 5, character: 9 },
    });
    const typed = await client.request<TextEdit[]>('textDocument/onTypeFormatting', {
      ...at(4, 0),
      ch: '\n',
      options: { tabSize: 2, insertSpaces: true },
    });
    expect(typed.every(({ range }) => range.start.line === 3)).toBe(true);
    expect(typed.length).toBeGreaterThan(0);
    expect(client.logged).toEqual([]);
  });
});

test('hints are asked for again when a setting changes, and those turned off are gone', async () => {
  const { client } = start();
  client.connection.onRequest('client/registerCapability', () => null);
  const asked = new Promise<void>((resolve) => {
    client.connection.onRequest('workspace/inlayHint/refresh', () => {
      resolve();
      return null;
    });
  });
  await client.initialize(fullClient);
  await client.open(uriOf('plan.mahl'), text);
  await client.notify('workspace/didChangeConfiguration', {
    settings: { mahlstick: { hints: { visible: false, places: false, value: false, budget: false } } },
  });
  await within(asked, 'the question');
  const range = whole;
  expect(await client.request<InlayHint[]>('textDocument/inlayHint', { ...document(), range })).toEqual([]);
});

test('a rename that may miss plans says so, once, where no open folder holds what they share', async () => {
  const { client } = start();
  const shown: string[] = [];
  client.connection.onNotification('window/showMessage', ({ message }: { readonly message: string }) => {
    shown.push(message);
  });
  const rename = (place: ReturnType<typeof at>, newName: string) =>
    client.request<WorkspaceEdit>('textDocument/rename', { ...place, newName });
  await client.initialize(bareClient);
  await client.open(uriOf('plan.mahl'), text);

  // `heir.mahl` is based on this plan, which nothing shows here.
  await rename(at(3, 8), 'cart');
  expect(shown).toEqual([]);
  const sky = await rename(at(6, 12), 'dusk');
  expect(edited(sky)).toEqual(['base.mahl:0 dusk', 'base.mahl:2 dusk', 'plan.mahl:6 dusk']);
  await rename(at(6, 12), 'dawn');
  const part = await rename(at(4, 30), 'gate');
  expect(edited(part)).toEqual(['plan.mahl:4 gate', 'tram.svg:0 gate']);
  const inAll = 'Open the folder to have names changed in all its plans.';
  expect(shown).toEqual([
    `“base.mahl” lies in no open folder, so a plan that is based on it and is not open keeps the old name. ${inAll}`,
    `“tram.svg” lies in no open folder, so a plan that takes this part of it and is not open keeps the old name. ${inAll}`,
  ]);
});
