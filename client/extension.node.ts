import type * as vscode from 'vscode';
import { activateWith, deactivateAll } from './activate.js';

/** For VS Code on the desktop and on a remote machine: the server is a process of its own. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  await activateWith(context, async (parts) => {
    const { converse } = await import('./language-client.node.js');
    return converse(context.asAbsolutePath('dist/server.node.js'), parts);
  });
}

export const deactivate = deactivateAll;
