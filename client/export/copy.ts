import * as vscode from 'vscode';
import type { Look } from '../preview/look.js';
import type { ToPage } from '../preview/messages.js';
import type { ServerLink } from '../server-link.js';

/** Enough for a letter or a slide. */
const WIDTH = 2000;
const TOLD_MILLISECONDS = 4_000;

/** What the clipboard of a preview's page needs of the extension: the drawing, and words on how it went. */
export class CopyOfDrawing {
  readonly #server: ServerLink;
  readonly #log: vscode.LogOutputChannel;
  readonly #post: (message: ToPage) => void;

  constructor(server: ServerLink, log: vscode.LogOutputChannel, post: (message: ToPage) => void) {
    this.#server = server;
    this.#log = log;
    this.#post = post;
  }

  /** Gives the page the shown view, to be painted for the clipboard. */
  async give(plan: vscode.Uri, { view, distanceMillimetres, sitting }: Look): Promise<void> {
    const result = await this.#server
      .export(plan, {
        what: view,
        format: 'svg',
        ...(distanceMillimetres === undefined ? {} : { distanceMillimetres }),
        ...(sitting === undefined ? {} : { sitting }),
      })
      .catch((error: unknown) => {
        this.#log.debug(`No drawing to copy: ${String(error)}`);
        return null;
      });
    // An empty drawing can't be painted, which is how the page learns of it.
    const svg = result !== null && 'svg' in result ? result.svg : '';
    this.#post({ type: 'rasterise', id: 0, svg, width: WIDTH, goesTo: 'clipboard' });
  }

  async tell(isCopied: boolean): Promise<void> {
    if (isCopied) {
      vscode.window.setStatusBarMessage(
        vscode.l10n.t('The drawing is copied as an image.'),
        TOLD_MILLISECONDS,
      );
      return;
    }
    const chosen = await vscode.window.showWarningMessage(
      vscode.l10n.t(
        'The drawing could not be copied: a page may use the clipboard only while it has the focus. Click `Copy image` in the preview, or export it as PNG.',
      ),
      vscode.l10n.t('Export...'),
    );
    if (chosen !== undefined) await vscode.commands.executeCommand('mahlstick.exportDrawing');
  }
}
