import { mkdir, mkdtemp, rename, rm, symlink, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { Worker } from 'node:worker_threads';
import { encode as encodePng } from 'fast-png';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { createMessageConnection, type MessageConnection } from 'vscode-jsonrpc/node';
import {
  createConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type Connection,
} from 'vscode-languageserver/node';
import { URI } from 'vscode-uri';
import { serve } from '../../server/language/connection.js';
import * as features from '../../server/language/features.js';
import type { SceneResult } from '../../server/language/protocol.js';
import type { SquareNews } from '../../server/photograph/darkroom.js';
import { mozJpeg, painted, quarters, webp } from '../photographs/made.js';
import { fullClient } from './clients.js';
import { bundle, Client, startServer, within, type RunningServer } from './server.js';

const planOf = (photo: string): string =>
  `plan "Quarters"
canvas 40 x 30 cm
object wall
  shape rectangle (0, 0) to (40, 15)
  value 4
sitting "Block in" on 2026-03-09
  photo "${photo}"
`;

/** What the record shows, as text, once nothing of it is on its way. */
async function recordOf(client: Client, uri: string): Promise<string> {
  for (let looks = 0; looks < 200; looks++) {
    const params = { textDocument: { uri }, view: 'record' };
    const result = await client.request<SceneResult | null>('mahlstick/scene', params);
    const text = JSON.stringify(result?.scene);
    if (!text.includes('on its way')) return text;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('The record stayed on its way.');
}

describe('the server for node', () => {
  let bundled: Awaited<ReturnType<typeof bundle>>;
  let folder: string;
  let server: RunningServer;
  let uri: string;
  const file = (name: string) => path.join(folder, 'studio', name);
  const open = (photo: string, version = 1) => server.client.open(uri, planOf(photo), version);
  const write = async (name: string, level: number) =>
    writeFile(file(name), await mozJpeg(painted(120, 90, () => [level, level, level])));

  beforeAll(async () => {
    bundled = await bundle('node', false, true);
  });
  beforeEach(async () => {
    folder = await mkdtemp(path.join(os.tmpdir(), 'mahlstick-photographs-'));
    await mkdir(path.join(folder, 'studio/record'), { recursive: true });
    await writeFile(file('record/01.jpg'), await mozJpeg(quarters(120, 90)));
    uri = URI.file(file('plan.mahl')).toString();
    server = startServer(bundled.file);
    await server.client.initialize({});
  });
  afterEach(async () => {
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  });
  afterAll(() => bundled.remove());

  test('measures a photograph of a sitting, and again when the file is another', async () => {
    await write('record/01.jpg', 60);
    await open('record/01.jpg');
    const before = await recordOf(server.client, uri);
    expect(before).toContain('data:image/jpeg;base64,');
    await write('record/01.jpg', 200);
    const changes = [{ uri: URI.file(file('record/01.jpg')).toString(), type: 2 }];
    await server.client.notify('workspace/didChangeWatchedFiles', { changes });
    await vi.waitFor(async () => expect(await recordOf(server.client, uri)).not.toBe(before), {
      timeout: 20_000,
    });
  });

  test('shows the same when a photograph has another name', async () => {
    await open('record/01.jpg');
    const before = await recordOf(server.client, uri);
    await rename(file('record/01.jpg'), file('record/02.jpg'));
    await server.client.notify('textDocument/didChange', {
      textDocument: { uri, version: 2 },
      contentChanges: [{ text: planOf('record/02.jpg') }],
    });
    expect((await recordOf(server.client, uri)).replaceAll('02.jpg', '01.jpg')).toBe(before);
  });

  test.each([
    ['is not there', 'record/none.jpg', 'There is no such file.'],
    ['is a link out of the folder', 'record/link.jpg', 'This file lies outside the folder that is open.'],
    ['is no photograph', 'plan.mahl', 'This is no picture that is known here'],
    ['lies elsewhere', '../outside.jpg', 'This file lies outside the folder that is open.'],
  ])('says of a photograph that %s what is wrong', async (_, name, reason) => {
    await writeFile(path.join(folder, 'outside.jpg'), await mozJpeg(quarters(40, 30)));
    await symlink(path.join(folder, 'outside.jpg'), file('record/link.jpg'));
    await writeFile(file('plan.mahl'), planOf(name));
    await open(name);
    const record = await recordOf(server.client, uri);
    expect(record).not.toContain('data:image/jpeg');
    expect(record.replaceAll(/[^\w.]+/g, ' ')).toContain(reason.split(' ').slice(0, 3).join(' '));
  });
});

/**
 * A thread of node that has what a browser's worker has, and nothing of node; it is made of text, so it has no address
 * of its own.
 */
const asBrowser = (file: string): string => `
  const { parentPort } = require('node:worker_threads');
  globalThis.self = globalThis;
  globalThis.location = { href: 'blob:made-of-text' };
  globalThis.importScripts = () => undefined;
  globalThis.ImageData = class { constructor(data, width, height) { Object.assign(this, { data, width, height }); } };
  globalThis.postMessage = (message, transfer) => parentPort.postMessage(message, transfer);
  parentPort.on('message', (data) => globalThis.onmessage({ data }));
  const script = require('node:fs').readFileSync(${JSON.stringify(file)}, 'utf8');
  new Function('process', 'require', 'module', script)();
`;

test('what measures photographs runs in a worker of a browser too, for each kind of file', async () => {
  const bundled = await bundle('node', false, true);
  const worker = new Worker(asBrowser(path.join(path.dirname(bundled.file), 'photograph.js')), {
    eval: true,
  });
  try {
    const picture = quarters(64, 48);
    const files = [await mozJpeg(picture), encodePng({ ...picture, channels: 4 }), await webp(picture)];
    const answers: SquareNews[] = [];
    worker.on('message', (news: SquareNews) => 'answer' in news && answers.push(news));
    for (const bytes of files)
      worker.postMessage({ bytes, squaring: { path: 'a', corners: [], proportion: 4 / 3 } });
    await vi.waitFor(() => expect(answers).toHaveLength(files.length), { timeout: 20_000 });
    for (const answer of answers)
      expect(answer).toMatchObject({ answer: { ok: true, picture: { width: 480 } } });
  } finally {
    await worker.terminate();
    await bundled.remove();
  }
});

describe('measuring that takes long', () => {
  let connection: Connection;
  let toServer: MessageConnection;
  let client: Client;
  let told: string[];
  let isAborted: boolean;
  const uri = 'file:///studio/plan.mahl';

  beforeEach(async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const [up, down] = [new PassThrough(), new PassThrough()];
    connection = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
    toServer = createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
    client = new Client(toServer);
    [told, isAborted] = [[], false];
    type News = {
      readonly value: {
        readonly kind: string;
        readonly title?: string;
        readonly message?: string;
        readonly cancellable?: boolean;
      };
    };
    toServer.onNotification(
      '$/progress',
      ({ value: { kind, title = '', message = '', cancellable } }: News) => {
        told.push(
          [kind, title, message, cancellable ? 'can be stopped' : ''].filter((word) => word !== '').join(' '),
        );
      },
    );
    toServer.onRequest('client/registerCapability', () => null);
    serve(connection, {
      version: 'test',
      features: () => features,
      readBytes: () => Promise.resolve({ ok: true, bytes: Uint8Array.of(1, 2, 3) }),
      squarePhotograph: () => (_bytes, _squaring, options) =>
        new Promise((resolve) => {
          options?.signal?.addEventListener('abort', () => {
            isAborted = true;
            resolve({ ok: false, reason: 'Measuring was stopped.' });
          });
        }),
    });
    await client.initialize({ ...fullClient, window: { workDoneProgress: true } });
  });
  afterEach(() => {
    toServer.dispose();
    connection.dispose();
    vi.useRealTimers();
  });

  test('is shown with the photograph that it is about, and can be stopped', async () => {
    const token = new Promise<string>((resolve) => {
      toServer.onRequest('window/workDoneProgress/create', (params: { readonly token: string }) => {
        resolve(params.token);
        return null;
      });
    });
    await client.open(uri, planOf('record/02.jpg'));
    const params = { textDocument: { uri }, view: 'record' };
    await client.request('mahlstick/scene', params);
    vi.advanceTimersByTime(250);
    await vi.waitUntil(async () => {
      await client.request('mahlstick/scene', params);
      vi.advanceTimersByTime(300);
      return told.some((news) => news.includes('record/02.jpg'));
    });
    expect(told).toContain('begin Measuring photographs record/02.jpg can be stopped');
    await client.notify('window/workDoneProgress/cancel', { token: await within(token, 'the token') });
    await vi.waitUntil(() => told.includes('end'));
    expect(isAborted).toBe(true);
    const { scene } = await client.request<SceneResult>('mahlstick/scene', params);
    expect(JSON.stringify(scene)).toContain('Measuring was stopped.');
  });
});
