import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import * as esbuild from 'esbuild';
import {
  createMessageConnection,
  IPCMessageReader,
  IPCMessageWriter,
  PortMessageReader,
  PortMessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
  type MessageConnection,
} from 'vscode-jsonrpc/node';
import type {
  ClientCapabilities,
  Diagnostic,
  InitializeResult,
  PublishDiagnosticsParams,
} from 'vscode-languageserver-protocol';
import { bundleOptions } from '../support/bundle-options.js';

/** Long enough for a busy machine, short enough to fail. */
export const patienceMilliseconds = 20_000;

/** Settles as the promise does, or fails once patience is at an end. */
export async function within<T>(
  promise: Promise<T>,
  what: string,
  milliseconds = patienceMilliseconds,
): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`waited too long for ${what}`)), milliseconds);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Bundles an entry of the server as the build does, with the core that it runs on, into a folder of its own. */
export async function bundle(
  entry: 'node' | 'worker',
  alsoExport = false,
  alsoPhotographs = false,
  alsoGerman = false,
): Promise<{ readonly file: string; readonly remove: () => Promise<void> }> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'mahlstick-server-'));
  const built = async (name: string, from: string) => {
    const outfile = path.join(folder, 'dist', name);
    await esbuild.build({
      absWorkingDir: path.resolve(import.meta.dirname, '../..'),
      entryPoints: [from],
      outfile,
      bundle: true,
      logLevel: 'error',
      ...(await bundleOptions(from)),
    });
    return outfile;
  };
  await built('core.js', 'core');
  const file = await built('server.js', `server/entry/${entry}.ts`);
  if (entry === 'node') await built('features.js', 'server/entry/features.ts');
  if (alsoExport) await built('export.js', 'server/entry/renderers.ts');
  if (alsoPhotographs) await built('photograph.js', 'server/entry/photograph.ts');
  if (alsoGerman) await built('german.js', 'server/entry/german.ts');
  return { file, remove: () => rm(folder, { recursive: true, force: true }) };
}

/** A thread of Node that looks like a web worker: `self` with messages, and neither disk nor process. */
const asWebWorker = (file: string): string => `
  const { parentPort } = require('node:worker_threads');
  const self = { postMessage: (data) => parentPort.postMessage(data), addEventListener: () => undefined };
  parentPort.on('message', (data) => self.onmessage({ data }));
  self.importScripts = (address) => {
    const script = require('node:fs').readFileSync(new URL(address), 'utf8');
    new Function('self', 'process', 'require', 'setImmediate', 'module', script)(self);
  };
  self.importScripts(${JSON.stringify(pathToFileURL(path.resolve(file, '../core.js')).href)});
`;

export interface RunningServer {
  readonly process: ChildProcess;
  readonly client: Client;
  /** The exit code, or the signal that ended it. */
  readonly ended: Promise<number | string | null>;
  /** Ends the process whatever state it is in. */
  readonly stop: () => Promise<void>;
}

export type Transport = '--stdio' | '--node-ipc';

/** @param nodeArguments for Node itself, before the file */
export function startServer(
  file: string,
  transport: Transport = '--stdio',
  nodeArguments: readonly string[] = [],
): RunningServer {
  const ipc = transport === '--node-ipc';
  const child = spawn(process.execPath, [...nodeArguments, file, transport], {
    stdio: ['pipe', 'pipe', 'pipe', ...(ipc ? (['ipc'] as const) : [])],
  });
  child.stderr?.resume();
  const { stdin, stdout } = child;
  if (stdin === null || stdout === null) throw new Error('the server has no streams');
  const connection = ipc
    ? createMessageConnection(new IPCMessageReader(child), new IPCMessageWriter(child))
    : createMessageConnection(new StreamMessageReader(stdout), new StreamMessageWriter(stdin));
  const ended = new Promise<number | string | null>((resolve) => {
    child.once('exit', (code, signal) => resolve(code ?? signal));
  });
  return {
    process: child,
    client: new Client(connection),
    ended,
    stop: async () => {
      connection.dispose();
      if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
      await within(ended, 'the end of the server');
    },
  };
}

/** Starts the server in a thread that looks like a web worker. */
export function startWorker(file: string): Pick<RunningServer, 'client' | 'stop'> {
  const worker = new Worker(asWebWorker(file), { eval: true });
  // As the extension starts it: the core is what the worker is made of, and loads the server.
  worker.postMessage(pathToFileURL(file).href);
  const connection = createMessageConnection(new PortMessageReader(worker), new PortMessageWriter(worker));
  return {
    client: new Client(connection),
    stop: async () => {
      connection.dispose();
      await worker.terminate();
    },
  };
}

/** An editor, as far as the server can tell. */
export class Client {
  readonly published: PublishDiagnosticsParams[] = [];
  readonly logged: string[] = [];
  readonly #waiting = new Set<() => void>();

  constructor(readonly connection: MessageConnection) {
    connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
      this.published.push(params);
      this.#waiting.forEach((look) => look());
    });
    connection.onNotification('window/logMessage', ({ message }: { readonly message: string }) => {
      this.logged.push(message);
      this.#waiting.forEach((look) => look());
    });
    connection.onError(() => undefined);
    connection.listen();
  }

  async initialize(
    capabilities: ClientCapabilities,
    more: Readonly<Record<string, unknown>> = {},
  ): Promise<InitializeResult> {
    const result = await this.request<InitializeResult>('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities,
      ...more,
    });
    await this.notify('initialized', {});
    return result;
  }

  request<R>(method: string, params: unknown, milliseconds?: number): Promise<R> {
    return within(this.connection.sendRequest<R>(method, params), method, milliseconds);
  }

  notify(method: string, params: unknown): Promise<void> {
    return within(this.connection.sendNotification(method, params), method);
  }

  open(uri: string, text: string, version = 1): Promise<void> {
    return this.notify('textDocument/didOpen', {
      textDocument: { uri, languageId: 'mahl', version, text },
    });
  }

  /** The diagnostics of a version, when they have come. */
  async diagnostics(uri: string, version: number): Promise<readonly Diagnostic[]> {
    const found = () => this.published.findLast((one) => one.uri === uri && one.version === version);
    await this.until(() => found() !== undefined, `diagnostics of version ${version}`);
    return found()?.diagnostics ?? [];
  }

  until(holds: () => boolean, what: string): Promise<void> {
    const met = new Promise<void>((resolve) => {
      const look = (): void => {
        if (!holds()) return;
        this.#waiting.delete(look);
        resolve();
      };
      this.#waiting.add(look);
      look();
    });
    return within(met, what);
  }
}
