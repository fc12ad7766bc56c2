import { beforeAll, describe, expect, it } from 'vitest';
import type { Conversation, ConversationParts } from './conversation.js';
import { evaluatedBundle } from '../tests/support/evaluated-bundle.js';
import { quietEditor } from '../tests/support/quiet-editor.js';

/** A language client that starts when it is let, and like the real one can be stopped only when it has started. */
class SlowClient {
  state: 'new' | 'starting' | 'running' | 'stopped' = 'new';
  startNow: () => void = () => undefined;
  fail: () => void = () => undefined;
  #started: Promise<void> | undefined;

  start(): Promise<void> {
    this.#started ??= new Promise((resolve, reject) => {
      this.state = 'starting';
      this.startNow = () => {
        this.state = 'running';
        resolve();
      };
      this.fail = () => reject(new Error('It can’t be started.'));
    });
    return this.#started;
  }

  needsStop(): boolean {
    return this.state === 'starting' || this.state === 'running';
  }

  stop(): Promise<void> {
    if (this.state !== 'running') return Promise.reject(new Error(`It is ${this.state}.`));
    this.state = 'stopped';
    return Promise.resolve();
  }

  readonly asked: (readonly unknown[])[] = [];
  sendRequest(...asked: readonly unknown[]): Promise<null> {
    this.asked.push(asked);
    return Promise.resolve(null);
  }

  error(): void {}
  onDidChangeState(): void {}
  onNotification(): void {}
  onRequest(): void {}
}

type Kind = new (parts: ConversationParts, create: () => unknown) => Conversation;

describe('a server', () => {
  let begun: (client: SlowClient, debug?: (told: string) => void) => Conversation;
  beforeAll(async () => {
    const bundle = await evaluatedBundle('client/conversation', 'client/language-client.node');
    const { Conversation: Made } = bundle.evaluate(quietEditor().vscode) as { readonly Conversation: Kind };
    begun = (client, debug = () => undefined) =>
      new Made({ log: { debug } } as unknown as ConversationParts, () => client);
  });

  it('is ended when it has started, where it is starting', async () => {
    const client = new SlowClient();
    const conversation = begun(client);
    const started = conversation.start();
    const stopped = conversation.stop();
    expect(client.state).toBe('starting');
    client.startNow();
    await Promise.all([started, stopped]);
    expect(client.state).toBe('stopped');
  });

  it('has nothing to end before it was to start', async () => {
    const client = new SlowClient();
    await begun(client).stop();
    expect(client.state).toBe('new');
  });

  it('is given what it is asked with, and nothing else where that is not to be taken back', async () => {
    const client = new SlowClient();
    const plan = { textDocument: { uri: 'file:///jar.mahl' }, view: 'notan' } as const;
    const token = { isCancellationRequested: false, onCancellationRequested: () => ({ dispose: () => {} }) };
    const conversation = begun(client);
    await conversation.ask('scene', plan);
    await conversation.ask('scene', plan, token);
    expect(client.asked).toEqual([
      ['mahlstick/scene', plan],
      ['mahlstick/scene', plan, token],
    ]);
  });

  it('is told of in the log where it never came to run', async () => {
    const client = new SlowClient();
    const told: string[] = [];
    const conversation = begun(client, (line) => told.push(line));
    const started = conversation.start();
    const stopped = conversation.stop();
    client.fail();
    await expect(started).rejects.toThrow('can’t be started');
    await stopped;
    expect(told).toEqual(['The server was not stopped: Error: It can’t be started.']);
  });
});
