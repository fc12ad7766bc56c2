import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Hover } from 'vscode-languageserver-protocol';
import type { ExportResult } from '../../server/language/export-protocol.js';
import type { PlanVersion } from '../../server/language/protocol.js';
import { bareClient, fullClient } from './clients.js';
import { bundle, startServer, startWorker, within, type Client } from './server.js';

const uri = 'file:///studio/plan.mahl';
const text = [
  'canvas 40 x 30 cm',
  'object jug, dominant',
  '  shape circle 8 at (20, 15)',
  '  colour #7f9fb5',
  'palette',
  '  paint white PW6',
  '  paint sea PB15:4',
  '  paint earth PR101',
  ...['PY151', 'PY83', 'PY42', 'PO34', 'PR170', 'PR122', 'PG7'].map((index) => `  paint p${index} ${index}`),
].join('\n');

/**
 * In a process of its own, told of diagnostics or asking for them, and in a thread that has neither disk nor process.
 */
const servers = [
  ['node', bareClient],
  ['node', fullClient],
  ['worker', bareClient],
] as const;

describe.each(servers)('mixtures from the server as %s', (kind, abilities) => {
  let client: Client;
  let end: () => Promise<void>;

  beforeAll(async () => {
    const { file, remove } = await bundle(kind, true);
    const server = kind === 'node' ? startServer(file) : startWorker(file);
    ({ client } = server);
    end = async () => {
      await server.stop();
      await remove();
    };
    client.connection.onRequest('client/registerCapability', () => null);
    client.connection.onRequest('window/workDoneProgress/create', () => null);
    client.connection.onRequest('workspace/diagnostic/refresh', () => null);
    client.connection.onRequest('workspace/inlayHint/refresh', () => null);
    client.connection.onRequest('workspace/configuration', () => [null]);
    const reference = pathToFileURL(path.resolve(file, '../..')).href;
    await client.initialize(abilities, { initializationOptions: { reference } });
  });
  afterAll(() => end());

  it('are told of when they are there, with the plan at the same version', async () => {
    const versions: number[] = [];
    const mixed = new Promise<void>((resolve) => {
      client.connection.onNotification('mahlstick/planChanged', ({ version }: PlanVersion) => {
        versions.push(version);
        if (versions.length === 2) resolve();
      });
    });
    await client.open(uri, text);
    await within(mixed, 'the mixtures');
    expect(versions).toEqual([1, 1]);
    const hover = await client.request<Hover | null>('textDocument/hover', {
      textDocument: { uri },
      position: { line: 1, character: 8 },
    });
    expect(JSON.stringify(hover?.contents).replaceAll('\\', '')).toMatch(
      /Mixed of .*white.*: .*a prediction/,
    );
  });

  it('stand in a drawing that is taken out before they were there', async () => {
    const other = 'file:///studio/other.mahl';
    await client.open(other, text.replace('PR101', 'PBk7'));
    const exported = await client.request<ExportResult | null>('mahlstick/export', {
      textDocument: { uri: other },
      what: 'palette',
      format: 'svg',
    });
    const svg = exported !== null && 'svg' in exported ? exported.svg : '';
    expect(svg).toMatch(/\d[\s\u00A0]sea/u);
    expect(svg).not.toContain('being worked out');
  });
});
