import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ExportParams, ExportResult } from '../../server/language/export-protocol.js';
import { readPdf } from '../support/pdf.js';
import { bareClient } from './clients.js';
import { bundle, startServer, startWorker, type Client } from './server.js';

const uri = 'file:///studio/plan.mahl';
const text =
  'plan "Ένα κανάτι"\ncanvas 40 x 30 cm\nobject jug, dominant\n  shape circle 8 at (20, 15)\n  value 2\nallow bare ground because "the wall is the panel"\n';

/** The server in a process of its own, and in a thread that has neither disk nor process. */
const kinds = ['node', 'worker'] as const;

describe.each(kinds)('the server as %s', (kind) => {
  let client: Client;
  let end: () => Promise<void>;

  beforeAll(async () => {
    const { file, remove } = await bundle(kind, true);
    const reference = pathToFileURL(path.resolve(file, '../..')).href;
    const server = kind === 'node' ? startServer(file) : startWorker(file);
    ({ client } = server);
    end = async () => {
      await server.stop();
      await remove();
    };
    await client.initialize(bareClient, { initializationOptions: { reference } });
    await client.open(uri, text);
  });
  afterAll(() => end());

  const exported = (params: Omit<ExportParams, 'textDocument'>) =>
    client.request<ExportResult | null>('mahlstick/export', { textDocument: { uri }, ...params });

  it('gives a view as SVG', async () => {
    const result = await exported({ what: 'notan', format: 'svg', theme: 'dark' });
    expect(result).toMatchObject({ version: 1, remarks: [] });
    expect(result !== null && 'svg' in result ? result.svg : '').toMatch(
      /^<\?xml[^]*data-view="notan"[^]*<\/svg>\n$/,
    );
  });

  it.each([
    ['drawing', undefined, 'jug'],
    ['squint', 'A4', 'Ένα κανάτι'],
    ['sheet', undefined, '“the wall is the panel”'],
  ] as const)('gives %s as PDF', async (what, paper, told) => {
    const result = await exported({ what, format: 'pdf', ...(paper === undefined ? {} : { paper }) });
    const read = await readPdf(Buffer.from(result !== null && 'pdf' in result ? result.pdf : '', 'base64'));
    expect(read.text).toContain(told);
    expect(read.width).toBeGreaterThan(200);
  });

  it('refuses what is not well formed, and knows open plans only', async () => {
    await expect(exported({ what: 'photograph' as 'sheet', format: 'pdf' })).rejects.toThrow(
      'not well formed',
    );
    const other = { textDocument: { uri: 'file:///other.mahl' }, what: 'drawing', format: 'svg' };
    expect(await client.request('mahlstick/export', other)).toBeNull();
  });
});
