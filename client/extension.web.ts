import * as vscode from 'vscode';
import { activateWith, deactivateAll } from './activate.js';

/** For VS Code in a browser: the server is a worker. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const built = (name: string): string =>
    vscode.Uri.joinPath(context.extensionUri, 'dist', name).toString(true);
  let worker: Worker | undefined;
  const begin = (): Worker => {
    worker?.terminate();
    // The server runs on the core, which loads it.
    worker = new Worker(built('core.js'));
    worker.postMessage(built('server.web.js'));
    return worker;
  };
  context.subscriptions.push({ dispose: () => worker?.terminate() });
  await activateWith(context, async (parts) => {
    const { converse } = await import('./language-client.web.js');
    return converse(begin, parts);
  });
}

export const deactivate = deactivateAll;
