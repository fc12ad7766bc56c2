import type * as vscode from 'vscode';
import { t } from '../../../grammar/localised.js';
import { type FromPage, type Refusal, type ToPage, receiveFromPage } from '../messages.js';
import { MessageOrder } from './message-order.js';

export interface PageLineParts {
  readonly panel: Pick<vscode.WebviewPanel, 'visible' | 'onDidChangeViewState'> & {
    readonly webview: Pick<vscode.Webview, 'postMessage' | 'onDidReceiveMessage'>;
  };
  readonly log: Pick<vscode.LogOutputChannel, 'warn'>;
  readonly received: (message: FromPage) => void;
}

/**
 * What is said with the page of a preview: it has nothing before it listens and while it is hidden, and what it says is
 * checked.
 */
export class PageLine {
  readonly #parts: PageLineParts;
  readonly #order = new MessageOrder();
  /** Why messages of the page were not taken: each reason is logged once. */
  readonly #refused = new Set<Refusal | 'out of order'>();
  readonly #subscriptions: readonly vscode.Disposable[];
  #waiting: readonly { readonly listens: () => void; readonly closed: () => void }[] = [];
  #isClosed = false;

  constructor(parts: PageLineParts) {
    const { panel } = parts;
    this.#parts = parts;
    this.#subscriptions = [
      panel.webview.onDidReceiveMessage((data: unknown) => this.#receive(data)),
      panel.onDidChangeViewState(() => {
        // A hidden page is not kept: it says so itself when it is back and listens.
        if (!panel.visible) this.end();
      }),
    ];
  }

  get listens(): boolean {
    return this.#order.listens;
  }

  /** Settles when the page listens; rejects, with a sentence to the painter, when the preview is closed before. */
  ready(): Promise<void> {
    if (this.#order.listens) return Promise.resolve();
    return new Promise((listens, reject) => {
      const closed = () => reject(new Error(t('There is no preview of the plan.')));
      if (this.#isClosed) closed();
      else this.#waiting = [...this.#waiting, { listens, closed }];
    });
  }

  /** Says something to the page, if it listens. */
  post(message: ToPage): void {
    if (this.#order.listens) void this.#parts.panel.webview.postMessage(message);
  }

  /** The page is hidden or made anew. */
  end(): void {
    this.#order.end();
  }

  dispose(): void {
    this.#isClosed = true;
    this.end();
    for (const subscription of this.#subscriptions) subscription.dispose();
    for (const { closed } of this.#waiting) closed();
  }

  #receive(data: unknown): void {
    const received = receiveFromPage(data);
    if (!received.ok) return this.#refuse(received.reason);
    const { message } = received;
    if (!this.#order.takes(message)) return this.#refuse('out of order');
    if (message.type === 'ready') {
      for (const { listens } of this.#waiting) listens();
      this.#waiting = [];
    }
    this.#parts.received(message);
  }

  #refuse(reason: Refusal | 'out of order'): void {
    if (!this.#refused.has(reason)) this.#parts.log.warn(`A message of a preview was refused: ${reason}.`);
    this.#refused.add(reason);
  }
}
