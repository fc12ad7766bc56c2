import { spawn, type ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { StreamMessageReader, StreamMessageWriter, type Message } from 'vscode-jsonrpc/node';
import { processorTime } from '../processor-time.js';
import { stopwatch, type Taken } from '../taken.js';

/** A language server that can be started over its standard streams. */
export interface ServerKind {
  readonly name: string;
  readonly language: string;
  readonly command: readonly string[];
  /** How long it waits after a change before it looks at it, in milliseconds, by its own source. */
  readonly waits: number;
  /** Answers to `workspace/configuration`, by section. */
  readonly settings: Readonly<Record<string, unknown>>;
}

type Answer = (result: unknown) => void;

/** Long enough for a full computation of the largest plan on a busy machine. */
const PATIENCE_MILLISECONDS = 120_000;

/** One running server and an editor that speaks to it. */
export class RunningServer {
  readonly #child: ChildProcess;
  readonly #writer: StreamMessageWriter;
  readonly #answers = new Map<number, Answer>();
  /** What is waited for, by the kind of notification; told of each until it is the one. */
  readonly #waiting = new Map<string, Set<(params: never) => void>>();
  readonly #ended: Promise<unknown>;
  #asked = 0;

  constructor(readonly kind: ServerKind) {
    const [command = '', ...args] = kind.command;
    this.#child = spawn(command, args, { stdio: ['pipe', 'pipe', 'ignore'] });
    this.#ended = new Promise((resolve) => this.#child.once('exit', resolve));
    const { stdin, stdout } = this.#child;
    if (stdin === null || stdout === null) throw new Error('the server has no streams');
    this.#writer = new StreamMessageWriter(stdin);
    new StreamMessageReader(stdout).listen((message) => this.#take(message));
  }

  /** Asks for what an editor asks for first. */
  async initialize(capabilities: object = {}): Promise<void> {
    await this.request('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities: { workspace: { configuration: true }, ...capabilities },
    });
    this.notify('initialized', {});
  }

  request(method: string, params: unknown): Promise<unknown> {
    const id = (this.#asked += 1);
    const answered = new Promise((resolve) => this.#answers.set(id, resolve));
    this.#send({ id, method, params });
    return this.#patiently(answered, method);
  }

  notify(method: string, params: unknown): void {
    this.#send({ method, params });
  }

  /** The next notification of a kind that `fits`. */
  next<P>(method: string, fits: (params: P) => boolean): Promise<P> {
    const waiting = this.#waiting.get(method) ?? new Set();
    this.#waiting.set(method, waiting);
    const came = new Promise<P>((resolve) => {
      const look = (params: P): void => {
        if (!fits(params)) return;
        waiting.delete(look);
        resolve(params);
      };
      waiting.add(look);
    });
    return this.#patiently(came, method);
  }

  open(uri: string, text: string): void {
    this.notify('textDocument/didOpen', {
      textDocument: { uri, languageId: this.kind.language, version: 1, text },
    });
  }

  /** Milliseconds that it has worked so far, in all its threads. */
  get processorTime(): number {
    return processorTime(this.#child.pid ?? 0);
  }

  /** Begins to measure what it does. @returns what tells how long it has been */
  stopwatch(): () => Taken {
    return stopwatch(this.#child.pid ?? 0);
  }

  /** Resident memory, in megabytes. */
  get memory(): number {
    const status = readFileSync(`/proc/${this.#child.pid}/status`, 'utf8');
    return Number(/VmRSS:\s*(\d+)/.exec(status)?.[1]) / 1024;
  }

  async stop(): Promise<void> {
    this.#child.kill('SIGKILL');
    await this.#ended;
  }

  #send(message: object): void {
    // What it still asked before it ended needs no answer; what it is asked after is missed by who waits for that.
    this.#writer.write({ jsonrpc: '2.0', ...message }).catch(() => undefined);
  }

  #take(message: Message): void {
    const { id, method, params, result } = message as {
      readonly id?: number;
      readonly method?: string;
      readonly params?: unknown;
      readonly result?: unknown;
    };
    if (method === undefined && id !== undefined) {
      this.#answers.get(id)?.(result);
      this.#answers.delete(id);
    } else if (method !== undefined && id !== undefined) {
      this.#send({ id, result: method === 'workspace/configuration' ? this.#configuration(params) : null });
    } else if (method !== undefined) {
      this.#waiting.get(method)?.forEach((look) => look(params as never));
    }
  }

  #configuration(params: unknown): readonly unknown[] {
    const { items } = params as { readonly items: readonly { readonly section?: string }[] };
    return items.map(({ section = '' }) => this.kind.settings[section] ?? null);
  }

  /** What is waited for; fails where it takes too long, or the server ends meanwhile. */
  async #patiently<T>(promise: Promise<T>, what: string): Promise<T> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<string>((resolve) => {
      timer = setTimeout(() => resolve('waited too long for'), PATIENCE_MILLISECONDS);
    });
    const missed = Promise.race([late, this.#ended.then(() => 'ended before')]).then((how) => {
      throw new Error(`${this.kind.name}: ${how} ${what}`);
    });
    try {
      return await Promise.race([promise, missed]);
    } finally {
      clearTimeout(timer);
    }
  }
}
