import * as vscode from 'vscode';
import { builtPage, pageOptions, planIcon } from '../../preview/host/built-page.js';
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

/**
 * A page with pictures side by side beside the text: its frame, and what goes to and fro. A hidden page is not kept
 * alive.
 */
export class Shell {
  readonly #panel: vscode.WebviewPanel;
  #isReady = false;

  constructor({ extensionUri, log, title, column, ready, received, closed }: ShellParts) {
    this.#panel = vscode.window.createWebviewPanel(
      'mahlstick.sideBySide',
      title,
      { viewColumn: column, preserveFocus: false },
      pageOptions(extensionUri),
    );
    const { webview } = this.#panel;
    this.#panel.iconPath = planIcon(extensionUri);
    webview.onDidReceiveMessage((data: unknown) => {
      const message = readFromPage(data);
      if (message === undefined) log.warn('A message of a page with pictures side by side was refused.');
      else if (message.type === 'ready') {
        this.#isReady = true;
        ready();
      } else if (this.#isReady) received(message);
      else log.warn('A message of a page with pictures side by side came before the page listens.');
    });
    this.#panel.onDidChangeViewState(() => {
      // It says so itself when it is back and listens.
      if (!this.#panel.visible) this.#isReady = false;
    });
    this.#panel.onDidDispose(() => {
      this.#isReady = false;
      closed();
    });
    webview.html = builtPage(webview, extensionUri, 'side-by-side', { state: '{}', title });
  }

  /** Whether the page listens. */
  get isReady(): boolean {
    return this.#isReady;
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
