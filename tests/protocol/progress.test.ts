import { expect, test } from 'vitest';
import { bundledServer } from './bundled.js';
import { bareClient } from './clients.js';

const uri = 'file:///studio/plan.mahl';
const text = 'based on "base.mahl"\nobject tram\npath tram\n';

const start = bundledServer();

/** The kinds of progress told while references are looked for among files that take so long to be read. */
async function told(readMilliseconds: number, token?: string): Promise<readonly string[]> {
  const { client } = start();
  const kinds: string[] = [];
  client.connection.onNotification('$/progress', (params: { token: string; value: { kind: string } }) => {
    kinds.push(`${params.token}: ${params.value.kind}`);
  });
  client.connection.onRequest('mahlstick/readFile', async () => {
    await new Promise((resolve) => setTimeout(resolve, readMilliseconds));
    return { ok: true, text: 'object sky\n' };
  });
  await client.initialize(bareClient, { initializationOptions: { readFiles: true } });
  await client.open(uri, text);
  const places = await client.request<unknown[]>('textDocument/references', {
    textDocument: { uri },
    position: { line: 2, character: 6 },
    context: { includeDeclaration: true },
    ...(token === undefined ? {} : { workDoneToken: token }),
  });
  expect(places).toHaveLength(2);
  return kinds;
}

test('work that takes longer than a second is told to whom it asks', async () => {
  expect(await told(1_500, 'looking')).toEqual(['looking: begin', 'looking: end']);
});

test('short work is not told', async () => {
  expect(await told(1, 'looking')).toEqual([]);
});

test('no work is told to a client that gives no token', async () => {
  expect(await told(1_200)).toEqual([]);
});
