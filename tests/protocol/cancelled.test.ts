import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, expect, test, vi, type MockInstance } from 'vitest';
import {
  createConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type Connection,
} from 'vscode-languageserver/node';
import { serve } from '../../server/language/connection.js';
import * as features from '../../server/language/features.js';
import { Memory } from '../../server/measure/memory.js';
import { patienceMilliseconds } from './server.js';

/**
 * The server in this process, so that what it computes can be counted: whatever is measured of a picture goes through
 * `Memory.recall`. Messages are written as bytes in one go, as they come when they were sent one right after the other.
 */

const uri = 'file:///studio/plan.mahl';
const text = 'canvas 40 x 30 cm\nobject tram\n  shape rectangle (0, 0) to (20, 30)\n  value 2\n';

interface Answer {
  readonly id?: number;
  readonly result?: unknown;
  readonly error?: { readonly code: number };
}

let toServer: PassThrough;
let connection: Connection;
let answers: Map<number, Answer>;
let measured: MockInstance<Memory['recall']>;

beforeEach(() => {
  measured = vi.spyOn(Memory.prototype, 'recall');
  toServer = new PassThrough();
  const fromServer = new PassThrough();
  answers = new Map();
  new StreamMessageReader(fromServer).listen((message) => {
    const answer = message as Answer;
    if (answer.id !== undefined) answers.set(answer.id, answer);
  });
  connection = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(fromServer));
  serve(connection, { version: 'test', features: () => features });
});
afterEach(() => {
  connection.dispose();
  measured.mockRestore();
});

function sendAtOnce(...messages: readonly object[]): void {
  const bytes = messages.map((message) => {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
  });
  toServer.write(bytes.join(''));
}

async function answered(...ids: readonly number[]): Promise<readonly Answer[]> {
  const found = (): readonly Answer[] => ids.flatMap((id) => answers.get(id) ?? []);
  const waiting = { timeout: patienceMilliseconds, interval: 5 };
  await vi.waitUntil(() => found().length === ids.length, waiting);
  return found();
}

/** A client that asks for diagnostics, so that nothing is measured before it asks. */
async function begin(): Promise<void> {
  const capabilities = { textDocument: { diagnostic: {} } };
  sendAtOnce(
    { id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities } },
    { method: 'initialized', params: {} },
    {
      method: 'textDocument/didOpen',
      params: { textDocument: { uri, languageId: 'mahl', version: 1, text } },
    },
  );
  await answered(1);
}

const hover = (id: number): object => ({
  id,
  method: 'textDocument/hover',
  params: { textDocument: { uri }, position: { line: 1, character: 8 } },
});
const hints = (id: number): object => ({
  id,
  method: 'textDocument/inlayHint',
  params: {
    textDocument: { uri },
    range: { start: { line: 0, character: 0 }, end: { line: 4, character: 0 } },
  },
});
const cancel = (id: number): object => ({ method: '$/cancelRequest', params: { id } });
const edit = (version: number): object => ({
  method: 'textDocument/didChange',
  params: {
    textDocument: { uri, version },
    contentChanges: [{ text: text.replace('(20,', `(2${version},`) }],
  },
});
const ids = Array.from({ length: 20 }, (_, index) => 100 + index);

test.each([
  ['hovers', hover],
  ['inlay hints', hints],
])('twenty %s that are taken back at once measure nothing', async (_, ask) => {
  await begin();
  measured.mockClear();
  sendAtOnce(...ids.map(ask), ...ids.map(cancel));
  const all = await answered(...ids);
  expect(all.map(({ error }) => error?.code)).toEqual(ids.map(() => -32800));
  expect(measured).not.toHaveBeenCalled();

  sendAtOnce(ask(200));
  const [one] = await answered(200);
  expect(one?.result).toBeTruthy();
  expect(measured).toHaveBeenCalled();
});

test('of questions between edits only those of the last version are worked on', async () => {
  await begin();
  measured.mockClear();
  sendAtOnce(...[2, 3, 4, 5, 6].flatMap((version) => [edit(version), hover(version), hints(10 + version)]));
  const overtaken = await answered(2, 3, 4, 5, 12, 13, 14, 15);
  expect(overtaken.map(({ error }) => error?.code)).toEqual(overtaken.map(() => -32801));
  const [last] = await answered(6, 16);
  expect(JSON.stringify(last?.result)).toContain('Covers 65 % of the picture');
  const inBurst = measured.mock.calls.length;

  measured.mockClear();
  sendAtOnce(edit(9), hover(30), hints(31));
  await answered(30, 31);
  // All five versions together cost no more than twice what one does, the first one being without anything to go by.
  expect(measured.mock.calls.length).toBeGreaterThan(0);
  expect(inBurst).toBeLessThanOrEqual(2 * measured.mock.calls.length);
});
