import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { activateWith, deactivateAll } from './activate.js';

/** For VS Code in a browser: the server is a worker. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const script = vscode.Uri.joinPath(context.extensionUri, 'dist/server.web.js').toString(true);
  let worker: Worker | undefined;
  const startWorker = (): Promise<Worker> => {
    worker?.terminate();
    worker = new Worker(script);
    return Promise.resolve(worker);
  };
  context.subscriptions.push({ dispose: () => worker?.terminate() });
  await activateWith(
    context,
    (clientOptions) => new LanguageClient('mahlstick', 'Mahlstick', startWorker, clientOptions),
  );
}

export const deactivate = deactivateAll;
