import * as vscode from 'vscode';
import { createNonce, pageHtml } from '../../preview/host/page.js';
import { type FromPage, readFromPage, type ToPage } from '../messages.js';

export interface ShellParts {
  readonly extensionUri: vscode.Uri;
  readonly log: vscode.LogOutputChannel;
  readonly title: string;
  readonly column: vscode.ViewColumn;
  /** The page listens, for the first time or because it was hidden and is back. */
  readonly ready: () => void;
  readonly received: (message: Exclude<FromPage, { readonly type: 'ready' }>) => void;
  readonly closed: () => void;
}

/** A page with pictures side by side beside the text: its frame, and what goes to and fro. A hidden page is not kept alive. */
export class Shell {
  readonly #panel: vscode.WebviewPanel;
  #isReady = false;

  constructor({ extensionUri, log, title, column, ready, received, closed }: ShellParts) {
    this.#panel = vscode.window.createWebviewPanel(
      'mahlstick.sideBySide',
      title,
      { viewColumn: column, preserveFocus: false },
      {
        enableScripts: true,
        enableForms: false,
        localResourceRoots: [vscode.Uri.joinPath(extensionUri, 'dist')],
      },
    );
    const { webview } = this.#panel;
    this.#panel.iconPath = {
      light: vscode.Uri.joinPath(extensionUri, 'client/media/plan-light.svg'),
      dark: vscode.Uri.joinPath(extensionUri, 'client/media/plan-dark.svg'),
    };
    webview.onDidReceiveMessage((data: unknown) => {
      const message = readFromPage(data);
      if (message === undefined) log.warn('A message of a page with pictures side by side was refused.');
      else if (message.type === 'ready') {
        this.#isReady = true;
        ready();
      } else received(message);
    });
    this.#panel.onDidChangeViewState(() => {
      // It says so itself when it is back and listens.
      if (!this.#panel.visible) this.#isReady = false;
    });
    this.#panel.onDidDispose(() => {
      this.#isReady = false;
      closed();
    });
    const built = (file: string) =>
      webview.asWebviewUri(vscode.Uri.joinPath(extensionUri, 'dist', file)).toString();
    webview.html = pageHtml({
      cspSource: webview.cspSource,
      nonce: createNonce(),
      scriptUri: built('side-by-side.js'),
      styleUri: built('side-by-side.css'),
      state: '{}',
      title,
    });
  }

  get column(): vscode.ViewColumn | undefined {
    return this.#panel.viewColumn;
  }

  post(message: ToPage): void {
    if (this.#isReady) void this.#panel.webview.postMessage(message);
  }

  dispose(): void {
    this.#panel.dispose();
  }
}
