import * as vscode from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from 'vscode-languageclient/browser';
import { activateWith, deactivateAll } from './activate.js';

/** A worker that fails ends nothing by itself: what waits for its answer would wait for ever. */
class WorkerReader extends BrowserMessageReader {
  constructor(worker: Worker) {
    super(worker);
    worker.addEventListener('error', () => this.fireClose());
  }
}

/** For VS Code in a browser: the server is a worker. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const built = (name: string): string =>
    vscode.Uri.joinPath(context.extensionUri, 'dist', name).toString(true);
  let worker: Worker | undefined;
  // The reader and writer are made here: older VS Codes wrap workers, which the language client then takes for no
  // worker at all.
  const startWorker = (): Promise<MessageTransports> => {
    worker?.terminate();
    // The server runs on the core, which loads it.
    worker = new Worker(built('core.js'));
    worker.postMessage(built('server.web.js'));
    return Promise.resolve({
      reader: new WorkerReader(worker),
      writer: new BrowserMessageWriter(worker),
    });
  };
  context.subscriptions.push({ dispose: () => worker?.terminate() });
  await activateWith(
    context,
    (clientOptions) => new LanguageClient('mahlstick', 'Mahlstick', startWorker, clientOptions),
  );
}

export const deactivate = deactivateAll;
