import { expect, test } from 'vitest';
import { CancellationTokenSource } from 'vscode-jsonrpc';
import { everything, openPlan } from '../../server/language/test-support.js';
import type { PlanVersion } from '../../server/language/protocol.js';
import { marketPlan } from '../support/market.js';
import { bundledServer } from './bundled.js';
import { fullClient, pointedAt } from './clients.js';
import { within } from './server.js';

const uri = 'file:///studio/plan.mahl';
const outlines = Array.from(
  { length: 60 },
  (_, index) =>
    `object thing${index}\n  shape smooth (${index}, 1) (${index + 9}, 4) (${index + 5}, 30) (${index}, 20)\n  value ${1 + (index % 5)}\n`,
).join('');
const text = `plan "x"\ncanvas 80 x 50 cm\n${outlines}`;

const start = bundledServer();

test('of a hundred edits in a burst few are computed, and the last is right', async () => {
  const { client } = start();
  client.connection.onRequest('client/registerCapability', () => null);
  await client.initialize(fullClient, pointedAt);
  await client.open(uri, text);
  await client.diagnostics(uri, 1);

  const edits = Array.from({ length: 100 }, (_, index) =>
    client.notify('textDocument/didChange', {
      textDocument: { uri, version: index + 2 },
      contentChanges: [
        {
          range: { start: { line: 0, character: 6 }, end: { line: 0, character: 6 } },
          text: String(index % 10),
        },
        ...(index === 99
          ? [{ range: { start: { line: 4, character: 0 }, end: { line: 4, character: 7 } }, text: '  valeu' }]
          : []),
      ],
    }),
  );
  await Promise.all(edits);
  const last = await client.diagnostics(uri, 101);

  const digits = Array.from({ length: 100 }, (_, index) => String((99 - index) % 10)).join('');
  const fresh = openPlan(text.replace('x"', `${digits}x"`).replace('  value', '  valeu'), everything);
  expect(last).toEqual(fresh.service.diagnostics(fresh.uri));
  expect(last.map(({ code }) => code)).toContain('unknown-word');

  const versions = client.published.map(({ version }) => version ?? 0);
  expect(versions).toEqual(versions.toSorted((a, b) => a - b));
  // All hundred edits are on their way before the first is taken in; a few may still be read one by one.
  expect(versions.length).toBeLessThan(20);
});

test('a drawing that is asked for when the plan has changed comes before the diagnostics', async () => {
  const { client } = start();
  const order: string[] = [];
  client.connection.onNotification('mahlstick/planChanged', ({ version }: PlanVersion) => {
    order.push(`changed ${version}`);
    const params = { textDocument: { uri }, view: 'drawing' };
    void client.request('mahlstick/scene', params).then(() => order.push('scene'));
  });
  const diagnosed = new Promise<void>((resolve) => {
    client.connection.onNotification('mahlstick/planDiagnosed', ({ version }: PlanVersion) => {
      order.push(`diagnosed ${version}, ${client.published.at(-1)?.version ?? 0} published`);
      resolve();
    });
  });
  await client.initialize({});
  await client.open(uri, marketPlan(60));
  await within(diagnosed, 'the diagnostics');
  expect(order).toEqual(['changed 1', 'scene', 'diagnosed 1, 1 published']);
});

test('an edit and a question in one go are answered in their order', async () => {
  const { client } = start();
  await client.initialize({});
  await client.open(uri, 'canvas 40 x 30 cm\nobject tram');
  const sent = client.notify('textDocument/didChange', {
    textDocument: { uri, version: 2 },
    contentChanges: [{ text: 'canvas 40 x 30 cm\nobject wall' }],
  });
  const symbols = await client.request<{ name: string }[]>('textDocument/documentSymbol', {
    textDocument: { uri },
  });
  await sent;
  expect(symbols.map(({ name }) => name)).toEqual(['canvas', 'wall']);
});

test('a question that is taken back before its turn is not answered', async () => {
  const { client } = start();
  await client.initialize({});
  await client.open(uri, text);
  const cancellation = new CancellationTokenSource();
  const params = { textDocument: { uri }, view: 'drawing' };
  // While the first drawing is made, the second question and its withdrawal arrive.
  const first = client.request('mahlstick/scene', params);
  const second = client.connection.sendRequest('mahlstick/scene', params, cancellation.token);
  cancellation.cancel();
  await expect(within(second, 'the second answer')).rejects.toMatchObject({ code: -32800 });
  expect(await first).toMatchObject({ version: 1 });
});
