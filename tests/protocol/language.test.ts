import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, Hover } from 'vscode-languageserver-types';
import { pathToFileURL } from 'node:url';
import path from 'node:path';
import { bundle, startServer, startWorker, type Client, type RunningServer } from './server.js';

const uri = 'file:///studio/plan.mahl';
/** Its ground shows on a tenth of it; one object more than one is dominant. */
const text =
  'canvas  100 x 50 cm\nfocus   upper right\nrule    bare ground limit 2%\n' +
  'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (90, 50)\n  value   4\n' +
  'object  lamp, dominant\n  shape   circle 10 at focus\n  value   5\n' +
  'object  chair, dominant\n  shape   rectangle 10 x 10 at (20, 30)\n  value   3\n';

type Running = Pick<RunningServer, 'client' | 'stop'>;
const hosts = ['node', 'worker'] as const;

describe.each(hosts)('a server in %s', (host) => {
  let bundled: Awaited<ReturnType<typeof bundle>>;
  const running: Running[] = [];

  beforeAll(async () => {
    bundled = await bundle(host, false, false, true);
  });
  afterEach(async () => {
    await Promise.all(running.splice(0).map((server) => server.stop()));
  });
  afterAll(() => bundled.remove());

  async function opened(locale: string): Promise<Client> {
    const server = host === 'node' ? startServer(bundled.file) : startWorker(bundled.file);
    running.push(server);
    const installed = pathToFileURL(path.resolve(path.dirname(bundled.file), '..')).href;
    await server.client.initialize(
      { textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } } },
      { locale, initializationOptions: { reference: installed } },
    );
    await server.client.open(uri, text);
    await server.client.until(() => server.client.published.length > 0, 'diagnostics');
    return server.client;
  }

  const told = (client: Client): string =>
    JSON.stringify((client.published.at(-1)?.diagnostics ?? []).map(({ message }) => message));

  async function titles(client: Client): Promise<string> {
    const range = { start: { line: 10, character: 0 }, end: { line: 10, character: 20 } };
    const context = { diagnostics: [] };
    const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri },
      range,
      context,
    });
    return actions.map(({ title }) => title).join('\n');
  }

  async function hoverOfRule(client: Client): Promise<string> {
    const position = { line: 2, character: 12 };
    const hover = await client.request<Hover>('textDocument/hover', { textDocument: { uri }, position });
    return JSON.stringify(hover.contents);
  }

  test('tells findings, their fixes and rules in German to a client that speaks it', async () => {
    const client = await opened('de-CH');
    expect(told(client)).toContain('Auf 10 % des Bildes liegt kein Gegenstand');
    expect(told(client)).toContain('`chair` ist Hauptgegenstand, und `lamp` ebenso');
    expect(told(client)).not.toMatch(/\b(?:the|picture|object)\b/iu);
    expect(await titles(client)).toContain('`chair` zum Nebengegenstand machen');
    expect(await titles(client)).toContain('`one dominant` für `chair` mit Begründung aussetzen');
    expect(await hoverOfRule(client)).toContain(
      'Für einen Teil der Leinwand ist nichts geplant. Üblicherweise',
    );
    expect(client.logged).toEqual([]);
  });

  test('tells them in English to a client that speaks another language', async () => {
    const client = await opened('fr');
    expect(told(client)).toContain('Bare ground shows on 10 % of the picture');
    expect(await titles(client)).toContain('Make `chair` secondary');
    expect(await hoverOfRule(client)).toContain('Nothing is planned for a part of the canvas. Usually');
  });
});
