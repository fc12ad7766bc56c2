import { expect, test } from 'vitest';
import type { Diagnostic, DocumentDiagnosticReport } from 'vscode-languageserver-protocol';
import type { PlanVersion } from '../../server/language/protocol.js';
import { bundledServer } from './bundled.js';
import { type Client, patienceMilliseconds, within } from './server.js';

const uri = 'file:///studio/plan.mahl';
const text = 'canvas 40 x 30 cm\nobject tram\n  shape rectangle (0, 0) to (40, 30)\n  value 2\npath tarm\n';

const start = bundledServer();
let client: Client;

const pulling = { textDocument: { diagnostic: {} }, workspace: { diagnostics: { refreshSupport: true } } };
const change = (version: number, content: string) =>
  client.notify('textDocument/didChange', {
    textDocument: { uri, version },
    contentChanges: [{ text: content }],
  });
const pull = (previousResultId?: string) =>
  client.request<DocumentDiagnosticReport>('textDocument/diagnostic', {
    textDocument: { uri },
    ...(previousResultId === undefined ? {} : { previousResultId }),
  });
const codes = (items: readonly Diagnostic[]) => items.map(({ code }) => code);

test('a client that asks for diagnostics is given them, and not sent any', async () => {
  ({ client } = start());
  const diagnosed: number[] = [];
  client.connection.onNotification('mahlstick/planDiagnosed', ({ version }: PlanVersion) => {
    diagnosed.push(version);
  });
  const { capabilities } = await client.initialize(pulling);
  expect(capabilities.diagnosticProvider).toMatchObject({ interFileDependencies: true });
  await client.open(uri, text);
  const first = await pull();
  if (first.kind !== 'full') throw new Error('nothing was known yet');
  expect(codes(first.items)).toContain('unknown-name');
  expect(await pull(first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });

  await change(2, text.replace('tarm', 'tram'));
  const second = await pull(first.resultId);
  if (second.kind !== 'full') throw new Error('the plan has changed');
  expect(codes(second.items)).not.toContain('unknown-name');
  expect(await pull('older')).toMatchObject({ kind: 'full', items: second.items });
  await expect.poll(() => diagnosed, { timeout: patienceMilliseconds }).toEqual([1, 1, 2, 2]);

  await client.notify('textDocument/didClose', { textDocument: { uri } });
  expect(await pull()).toEqual({ kind: 'full', items: [] });
  expect(client.published).toEqual([]);
});

test('a question that an edit overtakes is to be asked again', async () => {
  ({ client } = start());
  await client.initialize(pulling);
  await client.open(uri, text);
  const overtaken = pull();
  const edited = change(2, text.replace('tarm', 'tram'));
  await expect(overtaken).rejects.toMatchObject({ code: -32802, data: { retriggerRequest: true } });
  await edited;
});

test('a client that would rather be sent them says so', async () => {
  ({ client } = start());
  const { capabilities } = await client.initialize(pulling, {
    initializationOptions: { pushDiagnostics: true },
  });
  expect(capabilities.diagnosticProvider).toBeUndefined();
  await client.open(uri, text);
  expect(codes(await client.diagnostics(uri, 1))).toContain('unknown-name');
});

test('a client is told to ask again when a setting changes what is found', async () => {
  ({ client } = start());
  const asked = new Promise<void>((resolve) => {
    client.connection.onRequest('workspace/diagnostic/refresh', () => {
      resolve();
      return null;
    });
  });
  await client.initialize(pulling);
  await client.open(uri, text);
  const first = await pull();
  await client.notify('workspace/didChangeConfiguration', {
    settings: { mahlstick: { rules: { 'bare ground': 'warning', 'no cue': 'off' } } },
  });
  await within(asked, 'the question');
  expect(first.kind).toBe('full');
});
