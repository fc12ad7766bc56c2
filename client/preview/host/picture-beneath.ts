import type * as vscode from 'vscode';
import type { Scene } from '../../../server/drawing/scene.js';
import type { ToPage } from '../messages.js';
import { SketchFile } from './sketch-file.js';

/**
 * The picture under the drawing: the sketch, or the photograph of a sitting, as the page wants it. No file is read for
 * the page but those that the drawn plan names.
 */
export class PictureBeneath implements vscode.Disposable {
  readonly #plan: () => vscode.Uri;
  readonly #file: SketchFile;
  #named: { readonly sketch: string | undefined; readonly photographs: Scene['photographs'] } | undefined;
  /** The sitting whose photograph the page wants; the sketch where it wants none. */
  #sitting: number | undefined;

  constructor(plan: () => vscode.Uri, post: (message: ToPage) => void) {
    this.#plan = plan;
    this.#file = new SketchFile(post);
  }

  /** The page has this drawing of the plan now. */
  drawn({ handling, photographs }: Scene): void {
    this.#named = { sketch: handling?.sketch?.file, photographs };
    this.#show();
  }

  /** The page wants the photograph of a sitting, by its index in the plan, or the sketch. */
  want(sitting: number | undefined): void {
    this.#sitting = sitting;
    this.#show();
  }

  /** The page has lost what it was given, and has yet to say what it wants. */
  forget(): void {
    this.#file.forget();
    this.#sitting = undefined;
    this.#named = undefined;
  }

  dispose(): void {
    this.#file.dispose();
  }

  #show(): void {
    const { sketch, photographs = [] } = this.#named ?? {};
    const photograph = photographs.find(({ sitting }) => sitting === this.#sitting);
    this.#file.show(
      this.#plan(),
      this.#sitting === undefined ? sketch : photograph?.file,
      photograph === undefined ? 'sketch' : 'photograph',
    );
  }
}
