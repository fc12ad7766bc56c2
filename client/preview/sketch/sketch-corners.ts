import type { SketchPlace } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { element } from '../elements.js';
import { CornerBoard, type Taken } from './corner-board.js';
import { cornerPlaces } from './corner-places.js';
import { takenSketch } from './sketch-squarer.js';

const sectionId = 'sketch-corners';

/** The file of a sketch that can be shown, with a number that is another for every file that came. */
export interface SketchBytes {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly count: number;
}

/** Placing the corners of the canvas in the sketch as it was taken: a button, and what it opens above the drawing. */
export class SketchCorners {
  readonly button = element(
    'button',
    { type: 'button', class: 'tool opens', 'aria-expanded': 'false', 'aria-controls': sectionId },
    'Place its corners',
  );
  readonly section: HTMLElement;
  readonly #board: CornerBoard;
  #file: SketchBytes | undefined;
  #corners: readonly SketchPlace[] = [];
  #isOpen = false;
  /** The sketch as it is shown, and of which file it is. */
  #taken: (Taken & Pick<SketchBytes, 'count'>) | undefined;
  #working = false;

  constructor(write: (change: HandChange) => void) {
    this.#board = new CornerBoard((corner, to, { width, height }) =>
      write({ kind: 'sketch corner', corner, to, width, height }),
    );
    this.button.title =
      'Shows the sketch as it was taken, to drag the corners of the canvas onto the corners of its sheet';
    this.section = element(
      'section',
      { class: 'sketch-corners', id: sectionId, 'aria-label': 'Corners of the sketch', hidden: '' },
      element(
        'p',
        {},
        'Drag the four handles onto the corners of the sheet; each is written in the plan when you let go. With the keyboard, Tab goes to a corner and arrow keys move it, with Shift in large steps.',
      ),
      this.#board.figure,
    );
    this.button.addEventListener('click', () => {
      this.#isOpen = !this.#isOpen;
      this.#patch();
    });
  }

  /** What can be placed now: the corners as the text has them, in a file that can be shown; nothing else. */
  show(file: SketchBytes | undefined, corners: readonly SketchPlace[]): void {
    this.#file = file;
    this.#corners = corners;
    this.#patch();
  }

  /** What was put down is in the text now, or will not be. */
  settle(): void {
    this.#board.settle();
  }

  #patch(): void {
    const isShown = this.#isOpen && this.#file !== undefined;
    this.button.setAttribute('aria-expanded', String(isShown));
    this.section.hidden = !isShown;
    if (!isShown) return;
    if (this.#taken?.count === this.#file?.count && this.#taken !== undefined)
      this.#board.show(this.#taken, cornerPlaces(this.#taken, this.#corners));
    else void this.#take();
  }

  async #take(): Promise<void> {
    if (this.#working || this.#file === undefined) return;
    this.#working = true;
    const { bytes, count } = this.#file;
    const answer = await takenSketch(bytes);
    this.#working = false;
    if (this.#taken !== undefined) URL.revokeObjectURL(this.#taken.url);
    this.#taken = undefined;
    // What can't be shown is told where the sketch under the drawing is.
    if (!answer.ok) return;
    const { picture, width, height } = answer;
    this.#taken = { url: URL.createObjectURL(picture), width, height, count };
    this.#patch();
  }
}
