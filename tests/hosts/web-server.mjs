// @ts-check
// The thread that serves VS Code for the web: the package logs each request to standard output, which the thread that
// starts this one can drop.
import { createRequire } from 'node:module';
import path from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';

// Only the command line of the package is public; its server half is called here, so its version is pinned.
const require = createRequire(import.meta.url);
/** @type {{ runServer(host: string, port: number, config: object): Promise<import('node:http').Server> }} */
const { runServer } = require(path.join(path.dirname(require.resolve('@vscode/test-web')), 'main.js'));
const server = await runServer('127.0.0.1', workerData.port, workerData.config);
server.on('listening', () => parentPort?.postMessage('listening'));
if (server.listening) parentPort?.postMessage('listening');
