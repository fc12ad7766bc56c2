import { describe, expect, test } from 'vitest';
import type {
  CodeAction,
  ColorInformation,
  ColorPresentation,
  CompletionItem,
  DocumentHighlight,
  DocumentSymbol,
  FoldingRange,
  Hover,
  Location,
  LocationLink,
  SymbolInformation,
  TextEdit,
} from 'vscode-languageserver-protocol';
import { views } from '../../server/drawing/scene.js';
import { changedScene } from '../../server/drawing/scene-change.js';
import type { ChangedScene, PlanVersion, SceneResult, WholeScene } from '../../server/language/protocol.js';
import { bundledServer } from './bundled.js';
import { bareClient, fullClient, pointedAt } from './clients.js';

const uri = 'file:///studio/tram.mahl';
const text = `plan "The last tram"
canvas 80 x 50 cm
focus upper right
colour teal #2f6f73 dominant
object sky
  shape rectangle (0, 0) to (80, 50)
  colour teal
  value  4
object tram, dominant
  shape rectangle (40, 10) to (70, 30)
  value 2
path sky, tarm
`;

const start = bundledServer();

const document = { textDocument: { uri } };
const at = (line: number, character: number) => ({ ...document, position: { line, character } });
const whole = { start: { line: 0, character: 0 }, end: { line: 12, character: 0 } };

describe.each([
  ['a client that offers nothing', bareClient],
  ['a client that offers everything', fullClient],
])('%s', (_, capabilities) => {
  const full = capabilities === fullClient;

  test('is answered in every feature', async () => {
    const { client } = start();
    const changedPlans: PlanVersion[] = [];
    client.connection.onNotification('mahlstick/planChanged', (params: PlanVersion) => {
      changedPlans.push(params);
    });
    client.connection.onRequest('client/registerCapability', () => null);

    const { capabilities: offered, serverInfo } = await client.initialize(capabilities, pointedAt);
    expect(serverInfo?.name).toBe('Mahlstick');
    expect(offered.positionEncoding).toBe('utf-16');
    expect(offered.codeActionProvider !== undefined).toBe(full);

    await client.open(uri, text);
    const diagnostics = await client.diagnostics(uri, 1);
    const misspelt = diagnostics.find(({ code }) => code === 'unknown-name');
    expect(misspelt).toMatchObject({ source: 'mahlstick', range: { start: { line: 11, character: 10 } } });
    expect(misspelt?.codeDescription !== undefined).toBe(full);

    const items = await client.request<CompletionItem[]>('textDocument/completion', at(6, 9));
    expect(items.map(({ label }) => label)).toEqual(['teal']);
    const statements = await client.request<CompletionItem[]>('textDocument/completion', at(12, 0));
    expect(statements.some(({ insertTextFormat }) => insertTextFormat === 2)).toBe(full);

    const hover = await client.request<Hover>('textDocument/hover', at(8, 8));
    expect(hover.contents).toMatchObject({ kind: full ? 'markdown' : 'plaintext' });
    expect(JSON.stringify(hover.contents)).toContain('Covers 15 % of the picture.');

    const symbols = await client.request<(DocumentSymbol | SymbolInformation)[]>(
      'textDocument/documentSymbol',
      document,
    );
    expect(symbols.map(({ name }) => name)).toContain('tram');
    expect(symbols.every((symbol) => 'selectionRange' in symbol)).toBe(full);

    const definition = await client.request<Location | LocationLink[]>('textDocument/definition', at(11, 5));
    expect(Array.isArray(definition)).toBe(full);
    expect(JSON.stringify(definition)).toContain('"line":4');
    const highlights = await client.request<DocumentHighlight[]>('textDocument/documentHighlight', at(11, 5));
    expect(highlights.map(({ range }) => range.start.line)).toEqual([4, 11]);

    const folds = await client.request<FoldingRange[]>('textDocument/foldingRange', document);
    expect(folds).toContainEqual({ startLine: 8, endLine: 10 });

    const colours = await client.request<ColorInformation[]>('textDocument/documentColor', document);
    expect(colours).toHaveLength(1);
    const presentations = await client.request<ColorPresentation[]>('textDocument/colorPresentation', {
      ...document,
      ...colours[0],
    });
    expect(presentations[0]?.label).toBe('#2f6f73');

    const options = { tabSize: 2, insertSpaces: true };
    const edits = await client.request<TextEdit[]>('textDocument/formatting', { ...document, options });
    expect(edits.length).toBeGreaterThan(0);
    const range = { start: { line: 10, character: 0 }, end: { line: 10, character: 9 } };
    const rangeEdits = await client.request<TextEdit[]>('textDocument/rangeFormatting', {
      ...document,
      range,
      options,
    });
    expect(rangeEdits.every((edit) => edit.range.start.line === 10)).toBe(true);

    const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
      ...document,
      range: whole,
      context: { diagnostics: [] },
    });
    expect(actions.map(({ title }) => title)).toContain('Change to `tram`');
    const organise = { diagnostics: [], only: ['source.organizeImports'] };
    expect(
      await client.request('textDocument/codeAction', { ...document, range: whole, context: organise }),
    ).toEqual([]);

    for (const view of views) {
      const result = await client.request<SceneResult>('mahlstick/scene', { ...document, view });
      expect(result).toMatchObject({ version: 1, scene: { view } });
    }
    expect(changedPlans[0]).toEqual({ uri, version: 1 });
    const seen = { ...document, view: 'drawing' };
    const first = await client.request<WholeScene>('mahlstick/scene', { ...seen, known: 0 });
    const next = await client.request<ChangedScene>('mahlstick/scene', { ...seen, known: first.id });
    expect(changedScene(first.scene, next.change)).toEqual(first.scene);
    expect(JSON.stringify(next).length).toBeLessThan(JSON.stringify(first).length / 3);

    await client.notify('textDocument/didClose', document);
    await client.until(() => client.published.at(-1)?.version === undefined, 'the diagnostics to be cleared');
    expect(client.published.at(-1)).toEqual({ uri, diagnostics: [] });
    expect(await client.request('mahlstick/scene', { ...document, view: 'drawing' })).toBeNull();
    expect(client.logged).toEqual([]);
  });
});

test('a client that watches files is asked to watch plans and their parts', async () => {
  const { client } = start();
  const registered = new Promise<unknown>((resolve) => {
    client.connection.onRequest('client/registerCapability', (params: unknown) => {
      resolve(params);
      return null;
    });
  });
  await client.initialize(fullClient, pointedAt);
  expect(JSON.stringify(await registered)).toContain('**/*.{mahl,svg,jpg,');
});
