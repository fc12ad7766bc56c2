import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createMessageConnection, type MessageConnection } from 'vscode-jsonrpc/node';
import {
  createConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type Connection,
} from 'vscode-languageserver/node';
import { serve } from '../../server/language/connection.js';
import * as features from '../../server/language/features.js';
import { showWork } from '../../server/language/progress.js';
import { Memory } from '../../server/measure/memory.js';
import { fullClient } from './clients.js';
import { Client, patienceMilliseconds, within } from './server.js';

/**
 * Work that the server does of itself. Its clock is turned by hand, so the server and its client are in this process.
 */

const create = 'window/workDoneProgress/create';
const showsWork = { ...fullClient, window: { workDoneProgress: true } };

let connection: Connection;
let toServer: MessageConnection;
let client: Client;
/** Progress as it is told: `begin Looking`, `end`. */
let told: string[];

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const [up, down] = [new PassThrough(), new PassThrough()];
  connection = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  toServer = createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  client = new Client(toServer);
  told = [];
  toServer.onNotification('$/progress', ({ value }: { readonly value: Readonly<Record<string, string>> }) => {
    told.push([value['kind'], value['title']].filter((word) => word !== undefined).join(' '));
  });
  toServer.onRequest('client/registerCapability', () => null);
});
afterEach(() => {
  toServer.dispose();
  connection.dispose();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** A server that does nothing but the work. */
async function beginWork(): Promise<ReturnType<typeof showWork>> {
  connection.onInitialize(() => ({ capabilities: {} }));
  connection.onRequest('test/heard', () => told.length);
  connection.listen();
  await client.initialize(showsWork);
  return showWork(connection, true, 'Looking');
}

/** All that was sent before in either direction has arrived. */
const heard = () => client.request('test/heard', null);

/** The client is asked for a token once a second has passed, and answers so. */
async function asked(answer: () => null | Promise<null>): Promise<string> {
  const token = new Promise<string>((resolve) => {
    toServer.onRequest(create, (params: { readonly token: string }) => {
      resolve(params.token);
      return answer();
    });
  });
  vi.advanceTimersByTime(1_000);
  return within(token, create);
}

test('is told from its second second on until it ends', async () => {
  const work = await beginWork();
  vi.advanceTimersByTime(999);
  await heard();
  expect(told).toEqual([]);
  await asked(() => null);
  await vi.waitUntil(() => told.length > 0, { timeout: patienceMilliseconds });
  work.end();
  work.end();
  await heard();
  expect(told).toEqual(['begin Looking', 'end']);
});

test('is not told to a client that refuses the token', async () => {
  const work = await beginWork();
  await asked(() => Promise.reject(new Error('no')));
  await heard();
  work.end();
  await heard();
  expect(told).toEqual([]);
});

test('is not told when it has ended before the client has answered', async () => {
  const work = await beginWork();
  let answer: () => void = () => undefined;
  await asked(() => new Promise((resolve) => (answer = () => resolve(null))));
  work.end();
  answer();
  await heard();
  await heard();
  expect(told).toEqual([]);
});

test('goes on when the client would cancel it, which it was not offered', async () => {
  const work = await beginWork();
  const token = await asked(() => null);
  await vi.waitUntil(() => told.length > 0, { timeout: patienceMilliseconds });
  await client.notify('window/workDoneProgress/cancel', { token });
  await heard();
  expect(told).toEqual(['begin Looking']);
  work.end();
  await heard();
  expect(told).toEqual(['begin Looking', 'end']);
});

test.each([
  ['is shown to a client that can show it', showsWork, 1],
  ['is kept from a client that can’t', fullClient, 0],
])('that findings take long %s', async (_, capabilities, times) => {
  vi.spyOn(Memory.prototype, 'recall').mockImplementationOnce((_subject, _key, _inputs, work) => {
    vi.advanceTimersByTime(1_000);
    return work(undefined);
  });
  let creations = 0;
  toServer.onRequest(create, () => {
    creations += 1;
    return null;
  });
  serve(connection, { version: 'test', features: () => features });
  await client.initialize(capabilities);
  const uri = 'file:///studio/plan.mahl';
  await client.open(uri, 'canvas 40 x 30 cm\nobject tram\n  shape circle 9 at centre\n  value 2\n');
  await client.diagnostics(uri, 1);
  expect(creations).toBe(times);
});
