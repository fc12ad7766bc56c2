import * as vscode from 'vscode';
import type { ComparedView } from '../../../server/drawing/scene.js';
import type { CardResult } from '../../../server/language/comparison-protocol.js';
import type { ServerLink } from '../../server-link.js';
import type { CardMessage } from '../messages.js';
import { Shell, type ShellParts } from './shell.js';
import { nameOf, openPlan, textOf } from './texts.js';

export interface WallParts extends Pick<ShellParts, 'extensionUri' | 'log' | 'column'> {
  readonly server: ServerLink;
  readonly title: string;
  readonly plans: readonly vscode.Uri[];
  /** How many more there are. */
  readonly left: number;
  readonly closed: () => void;
}

/** Plans as small pictures to choose from; each comes when it is worked out. */
export class WallPanel implements vscode.Disposable {
  readonly #parts: WallParts;
  readonly #shell: Shell;
  #view: ComparedView = 'colour';
  /** Ends the work on pictures that are wanted no more. */
  #work = new vscode.CancellationTokenSource();

  constructor(parts: WallParts) {
    this.#parts = parts;
    this.#shell = new Shell({
      ...parts,
      ready: () => void this.#hang(),
      received: (message) => {
        if (message.type === 'open') void this.#open(message.index);
        else {
          this.#view = message.view;
          void this.#hang();
        }
      },
      closed: () => {
        this.#work.cancel();
        this.#work.dispose();
        parts.closed();
      },
    });
  }

  dispose(): void {
    this.#shell.dispose();
  }

  async #hang(): Promise<void> {
    this.#work.cancel();
    this.#work.dispose();
    this.#work = new vscode.CancellationTokenSource();
    const { token } = this.#work;
    const { title, plans, left, server, log } = this.#parts;
    this.#shell.post({ type: 'wall', title, view: this.#view, names: plans.map(nameOf), left });
    for (const [index, uri] of plans.entries()) {
      const read = await textOf(uri);
      if (token.isCancellationRequested) return;
      if (!read.ok) {
        this.#shell.post({ type: 'unreadable', index, reason: read.reason });
        continue;
      }
      const plan = { uri: server.uriText(uri), text: read.text };
      try {
        const result = await server.card({ plan, view: this.#view }, token);
        if (token.isCancellationRequested) return;
        if (result === null) throw new Error('no answer');
        this.#shell.post(cardMessage(index, result));
      } catch (error) {
        if (token.isCancellationRequested) return;
        log.debug(`No picture of ${uri.toString()}: ${String(error)}`);
        this.#shell.post({
          type: 'unreadable',
          index,
          reason: vscode.l10n.t('This plan could not be worked out.'),
        });
      }
    }
  }

  async #open(index: number): Promise<void> {
    const plan = this.#parts.plans[index];
    if (plan === undefined) return;
    try {
      await openPlan(plan, this.#shell.column);
    } catch {
      void vscode.window.showInformationMessage(vscode.l10n.t('{0} can’t be opened any more.', nameOf(plan)));
    }
  }
}

function cardMessage(index: number, { card, differs }: CardResult): CardMessage {
  const { strips, ...rest } = card;
  return {
    type: 'card',
    index,
    card: { ...rest, strips: strips.map((strip) => ({ ...strip, parts: [...strip.parts] })) },
    ...(differs === undefined ? {} : { differs }),
  };
}
