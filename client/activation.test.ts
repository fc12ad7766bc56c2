import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { ConversationParts } from './conversation.js';
import { type EvaluatedBundle, evaluatedBundle } from '../tests/support/evaluated-bundle.js';
import { type QuietEditor, quietEditor } from '../tests/support/quiet-editor.js';

const manifest = JSON.parse(readFileSync(path.resolve(import.meta.dirname, '../package.json'), 'utf8')) as {
  readonly contributes: { readonly commands: readonly { readonly command: string }[] };
};

interface Extension {
  readonly activate: (context: unknown) => Promise<void>;
  readonly deactivate: () => Promise<void>;
}

/** A server that says nothing until it is told to. */
class Silent {
  readonly parts: ConversationParts;
  readonly stop = vi.fn(() => Promise.resolve());
  answer: () => void = () => undefined;

  constructor(parts: ConversationParts) {
    this.parts = parts;
  }

  start(): Promise<void> {
    return new Promise((resolve) => {
      this.answer = () => {
        this.parts.entered('running');
        resolve();
      };
    });
  }
}

const context = {
  subscriptions: [],
  extensionUri: 'file:///extension',
  asAbsolutePath: (file: string) => file,
};
const settled = () => new Promise((resolve) => setImmediate(resolve));

let desktop: EvaluatedBundle;
let web: EvaluatedBundle;
let desktopClient: EvaluatedBundle;
beforeAll(async () => {
  [desktop, web, desktopClient] = await Promise.all([
    evaluatedBundle('client/extension.node'),
    evaluatedBundle('client/extension.web'),
    evaluatedBundle('client/language-client.node'),
  ]);
});

describe('the extension on the desktop', () => {
  let editor: QuietEditor;
  let extension: Extension;
  let loaded: string[];
  let servers: Silent[];
  const serverAt = (index: number): Silent => {
    const server = servers[index];
    if (server === undefined) throw new Error(`Only ${servers.length} servers have been begun.`);
    return server;
  };

  beforeEach(() => {
    editor = quietEditor();
    loaded = [];
    servers = [];
    extension = desktop.evaluate(editor.vscode, (file) => {
      loaded.push(file);
      return {
        converse: (_module: string, parts: ConversationParts) => {
          servers.push(new Silent(parts));
          return servers.at(-1);
        },
      };
    }) as Extension;
  });

  it('has every command before the language client is loaded, and waits for no server', async () => {
    const activated = extension.activate(context);
    expect([...editor.commands.keys()]).toEqual(
      expect.arrayContaining(manifest.contributes.commands.map(({ command }) => command)),
    );
    expect(loaded).toEqual([]);
    await activated;
    await settled();
    expect(loaded).toEqual(['./language-client.js']);
    expect(servers).toHaveLength(1);
  });

  it('ends the server when the editor ends', async () => {
    await extension.activate(context);
    await settled();
    await extension.deactivate();
    expect(serverAt(0).stop).toHaveBeenCalledOnce();
  });

  it('starts another server though the last never answers, and ends the last when it comes to it', async () => {
    await extension.activate(context);
    await settled();
    void editor.commands.get('mahlstick.restartServer')?.();
    await vi.waitFor(() => expect(servers).toHaveLength(2));
    expect(serverAt(0).stop).toHaveBeenCalledOnce();
    serverAt(1).answer();
  });

  it('starts another server for one that has ended, and none for one that it has ended itself', async () => {
    await extension.activate(context);
    await settled();
    serverAt(0).answer();
    serverAt(0).parts.ended();
    await vi.waitFor(() => expect(servers).toHaveLength(2));
    serverAt(0).parts.ended();
    await settled();
    expect(servers).toHaveLength(2);
  });
});

describe('the language client', () => {
  /** What it has of the editor as soon as it is evaluated. */
  const mark = 'CodeLens';

  it('is evaluated in a browser, where it is in the same file, when the server is started', async () => {
    const { vscode, asked, commands } = quietEditor();
    const extension = web.evaluate(vscode) as Extension;
    expect(asked).not.toContain(mark);
    const activated = extension.activate(context);
    expect([...commands.keys()]).toContain('mahlstick.openPreview');
    expect(asked).not.toContain(mark);
    await activated;
    await vi.waitFor(() => expect(asked).toContain(mark));
  });

  it('is not in the file that the desktop loads first', () => {
    const libraries = desktop.inputs.filter((file) => file.includes('node_modules/vscode-'));
    expect(libraries.filter((file) => !file.includes('/vscode-uri/'))).toEqual([]);
  });

  it('says nothing to a painter on the desktop, where it would not know in which language', () => {
    expect(desktopClient.inputs).toContain('client/conversation.ts');
    expect(desktopClient.inputs).not.toContain('grammar/localised.ts');
  });
});
