import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, test } from 'vitest';
import { bundledServer } from './bundled.js';
import { patienceMilliseconds, type Transport, within } from './server.js';

const start = bundledServer();

test('shutdown and exit end it in good order', async () => {
  const server = start();
  await server.client.initialize({});
  await server.client.request('shutdown', undefined);
  await server.client.notify('exit', undefined);
  expect(await within(server.ended, 'the end')).toBe(0);
});

test('an exit without a shutdown is told from one in good order', async () => {
  const server = start();
  await server.client.initialize({});
  await server.client.notify('exit', undefined);
  expect(await within(server.ended, 'the end')).toBe(1);
});

test('what comes after the shutdown is refused, and so is a second hello', async () => {
  const server = start();
  const { client } = server;
  await client.initialize({});
  await expect(client.initialize({})).rejects.toMatchObject({ code: -32600 });
  const symbols = { textDocument: { uri: 'file:///studio/a.mahl' } };
  expect(await client.request('textDocument/documentSymbol', symbols)).toEqual([]);
  await client.request('shutdown', undefined);
  await expect(client.request('textDocument/documentSymbol', symbols)).rejects.toMatchObject({
    code: -32600,
  });
});

test('it ends when its input ends', async () => {
  const server = start();
  await server.client.initialize({});
  server.process.stdin?.end();
  expect(await within(server.ended, 'the end')).toBe(1);
});

test('it ends when the process that started it is gone', async () => {
  const parent = spawn(process.execPath, ['-e', 'setInterval(() => undefined, 1000)'], { stdio: 'ignore' });
  try {
    const server = start();
    await server.client.initialize({}, { processId: parent.pid });
    parent.kill('SIGKILL');
    expect(await within(server.ended, 'the end')).toBe(1);
  } finally {
    parent.kill('SIGKILL');
  }
});

/** Starts the server as an editor does and tells what process that is; waits then to be killed. */
const editor = (file: string, transport: Transport): string => `
  const stdio = ['pipe', 'pipe', 'inherit'${transport === '--node-ipc' ? ", 'ipc'" : ''}];
  const server = require('node:child_process').spawn(process.execPath, [${JSON.stringify(file)}, '${transport}'], { stdio });
  server.stdout.once('data', () => console.log(server.pid));
  server.once('message', () => console.log(server.pid));
  const hello = { jsonrpc: '2.0', id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } };
  const text = JSON.stringify(hello);
  if (server.send) server.send(hello);
  else server.stdin.write('Content-Length: ' + text.length + '\\r\\n\\r\\n' + text);
  setInterval(() => undefined, 1000);
`;

test.each<Transport>(['--stdio', '--node-ipc'])(
  'it ends with an editor that is killed and did not name itself, over %s',
  async (transport) => {
    const { spawnargs } = start().process;
    const parent = spawn(process.execPath, ['-e', editor(spawnargs[1] ?? '', transport)], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let server: number | undefined;
    try {
      const [told] = (await within(once(parent.stdout, 'data'), 'its hello')) as [Buffer];
      server = Number(told.toString());
      parent.kill('SIGKILL');
      await expect.poll(() => isSignalled(server, 0), { timeout: patienceMilliseconds }).toBe(false);
    } finally {
      parent.kill('SIGKILL');
      isSignalled(server, 'SIGKILL');
    }
  },
);

/** Sends a signal to a process; 0 does nothing to it. @returns whether there is such a process */
function isSignalled(id: number | undefined, signal: NodeJS.Signals | 0): boolean {
  if (id === undefined) return false;
  try {
    return process.kill(id, signal);
  } catch {
    return false;
  }
}

test('it speaks over the channel of Node as well, and ends with it', async () => {
  const server = start('--node-ipc');
  await server.client.initialize({});
  await server.client.open('file:///studio/a.mahl', 'objekt tram');
  const diagnostics = await server.client.diagnostics('file:///studio/a.mahl', 1);
  expect(diagnostics.map(({ code }) => code)).toContain('unknown-word');
  server.process.disconnect();
  await within(server.ended, 'the end');
});
