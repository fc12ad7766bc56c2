import { t } from '../../../grammar/localised.js';
import type { SketchPlace } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import { element } from '../elements.js';
import { CornerBoard, type Taken } from './corner-board.js';
import { cornerPlaces } from './corner-places.js';
import { takenSketch } from './sketch-squarer.js';

const sectionId = 'sketch-corners';

/** The file of a sketch or photograph that can be shown, with a number that is another for every file that came. */
export interface SketchBytes {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly count: number;
}

/** What corners are placed in, as the text has them. */
export interface Cornered {
  readonly corners: readonly SketchPlace[];
  readonly grey?: SketchPlace | undefined;
  /** The sitting whose photograph it is, by its index in the plan; left out, it is the sketch. */
  readonly sitting?: number | undefined;
}

/**
 * Placing the corners of the canvas in the sketch or photograph as it was taken, and in a photograph a patch of grey: a
 * button, and what it opens above the drawing.
 */
export class SketchCorners {
  readonly button = element(
    'button',
    { type: 'button', class: 'tool opens', 'aria-expanded': 'false', 'aria-controls': sectionId },
    t('Place its corners'),
  );
  readonly section: HTMLElement;
  readonly #board: CornerBoard;
  readonly #opened: () => void;
  readonly #grey = element(
    'button',
    { type: 'button', class: 'tool asking', 'aria-pressed': 'false' },
    t('Click its grey patch'),
  );
  #file: SketchBytes | undefined;
  #cornered: Cornered | undefined;
  #isOpen = false;
  /** The sketch as it is shown, and of which file it is. */
  #taken: (Taken & Pick<SketchBytes, 'count'>) | undefined;
  #working = false;

  /** @param opened it is opened or closed now */
  constructor(write: (change: HandChange) => void, opened: () => void) {
    this.#opened = opened;
    this.#board = new CornerBoard(
      (place, to, { width, height }) => {
        const sitting = this.#cornered?.sitting;
        const at = { to, width, height };
        if (place !== 'grey')
          write({
            kind: 'sketch corner',
            corner: place,
            ...(sitting === undefined ? {} : { sitting }),
            ...at,
          });
        else if (sitting !== undefined) write({ kind: 'grey patch', sitting, ...at });
      },
      () => this.#grey.setAttribute('aria-pressed', 'false'),
    );
    this.#grey.title = t(
      'The next click in the photograph says where something neutral grey is, such as a grey card',
    );
    this.#grey.addEventListener('click', ({ detail }) => {
      const isAsked = !this.#board.asksForGrey;
      // A click that a key makes counts no presses of a pointer.
      this.#board.askForGrey(isAsked, detail === 0);
      this.#grey.setAttribute('aria-pressed', String(this.#board.asksForGrey));
    });
    this.button.title = t(
      'Shows it as it was taken, to drag the corners of the canvas onto the corners of the sheet',
    );
    this.section = element(
      'section',
      { class: 'sketch-corners', id: sectionId, 'aria-label': t('Corners of the sketch'), hidden: '' },
      element(
        'p',
        {},
        t(
          'Drag the four handles onto the corners of the sheet; each is written in the plan when you let go. With the keyboard, Tab goes to a corner and arrow keys move it, with Shift in large steps.',
        ),
      ),
      this.#grey,
      this.#board.figure,
    );
    this.button.addEventListener('click', () => {
      this.#isOpen = !this.#isOpen;
      this.#board.askForGrey(false);
      this.#opened();
      this.#patch();
    });
  }

  get isOpen(): boolean {
    return this.#isOpen;
  }

  /** What can be placed now: the corners as the text has them, in a file that can be shown; nothing else. */
  show(file: SketchBytes | undefined, cornered: Cornered | undefined): void {
    this.#file = file;
    this.#cornered = cornered;
    this.#patch();
  }

  /** What was put down is in the text now, or will not be. */
  settle(): void {
    this.#board.settle();
  }

  #patch(): void {
    const isShown = this.#isOpen && this.#file !== undefined && this.#cornered !== undefined;
    this.button.setAttribute('aria-expanded', String(isShown));
    this.section.hidden = !isShown;
    if (!isShown) {
      this.#give();
      return;
    }
    const { corners = [], grey, sitting } = this.#cornered ?? {};
    this.#grey.hidden = sitting === undefined;
    this.#grey.setAttribute('aria-pressed', String(this.#board.asksForGrey));
    this.section.setAttribute(
      'aria-label',
      sitting === undefined ? t('Corners of the sketch') : t('Corners of the photograph'),
    );
    if (this.#taken?.count === this.#file?.count && this.#taken !== undefined)
      this.#board.show(this.#taken, cornerPlaces(this.#taken, corners, grey));
    else void this.#take();
  }

  /** A large picture is not kept while it is not seen. */
  #give(): void {
    if (this.#taken !== undefined) URL.revokeObjectURL(this.#taken.url);
    this.#taken = undefined;
  }

  async #take(): Promise<void> {
    if (this.#working || this.#file === undefined) return;
    this.#working = true;
    const { bytes, count } = this.#file;
    const answer = await takenSketch(bytes);
    this.#working = false;
    this.#give();
    if (!answer.ok) {
      // What can't be shown is told where the sketch under the drawing is; another file may have come meanwhile.
      if (this.#file !== undefined && this.#file.count !== count) this.#patch();
      return;
    }
    const { picture, width, height } = answer;
    this.#taken = { url: URL.createObjectURL(picture), width, height, count };
    this.#patch();
  }
}
