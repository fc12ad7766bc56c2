import type * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { activateWith, deactivateAll } from './activate.js';

/** For VS Code on the desktop and on a remote machine: the server is a process of its own. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const module = context.asAbsolutePath('dist/server.node.js');
  // Trees of large plans die young: with room for them the garbage collector takes a fifth of the time.
  const options = { execArgv: ['--max-semi-space-size=64'] };
  await activateWith(context, (clientOptions) => {
    const run = { module, transport: TransportKind.ipc, options };
    return new LanguageClient('mahlstick', 'Mahlstick', { run, debug: run }, clientOptions);
  });
}

export const deactivate = deactivateAll;
