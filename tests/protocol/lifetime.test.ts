import { spawn } from 'node:child_process';
import { expect, test } from 'vitest';
import { bundledServer } from './bundled.js';
import { within } from './server.js';

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
  const server = start();
  await server.client.initialize({}, { processId: parent.pid });
  parent.kill('SIGKILL');
  expect(await within(server.ended, 'the end')).toBe(1);
});

test('it speaks over the channel of Node as well, and ends with it', async () => {
  const server = start('--node-ipc');
  await server.client.initialize({});
  await server.client.open('file:///studio/a.mahl', 'objekt tram');
  const diagnostics = await server.client.diagnostics('file:///studio/a.mahl', 1);
  expect(diagnostics.map(({ code }) => code)).toContain('unknown-word');
  server.process.disconnect();
  await within(server.ended, 'the end');
});
