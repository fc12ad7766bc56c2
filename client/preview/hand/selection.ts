import type { Board } from './board.js';
import { type Grip, isDeepInside } from './grips.js';
import type { MarkedPanel, MarkedThing } from './marked-panel.js';
import type { Overlay } from './overlay.js';
import { distance } from './place.js';

export interface SelectionHost {
  readonly board: Board;
  readonly overlay: Overlay;
  readonly panel: MarkedPanel;
  readonly place: HTMLElement;
  /** Something moves, is being written or drawn: handles would be in the way. */
  readonly hidesHandles: () => boolean;
}

/** Pixels of the screen round a handle that belong to it. */
const gripPixels = 13;

/**
 * The thing whose handles are shown and whose value and colour can be chosen: what had the focus last, or the cursor.
 */
export class Selection {
  readonly #host: SelectionHost;
  #subject: string | undefined;
  #marked = '';

  constructor(host: SelectionHost) {
    this.#host = host;
    host.place.addEventListener('focusin', ({ target }) => this.#focused(target));
  }

  select(subject: string | undefined): void {
    this.#subject = subject;
    this.show();
  }

  /** The cursor of the text is at these things; nothing is done as long as they are the same. */
  cursorAt(marked: readonly string[]): void {
    const key = marked.join('\n');
    if (key === this.#marked) return;
    this.#marked = key;
    this.select(marked.find((subject) => this.#host.board.whole(subject) !== undefined));
  }

  show(): void {
    const { board, overlay, panel, hidesHandles } = this.#host;
    const subject = this.#subject;
    const handles = subject === undefined || hidesHandles() ? [] : board.handles(subject);
    overlay.showGrips(handles, subject === undefined ? '' : board.nameOf(subject));
    const sized = handles.find((grip) => grip.kind === 'size');
    overlay.showFrame(board.outlineOfFrame(sized?.frame));
    panel.show(this.#thing(), board.ground?.handling);
  }

  /** The nearest handle, else the uppermost thing that can be moved: a finger takes only what is selected. */
  gripAt({ clientX: x, clientY: y, pointerType }: PointerEvent): Grip | undefined {
    const { board } = this.#host;
    const at = board.under({ x, y });
    const subject = this.#subject;
    if (at === undefined) return undefined;
    const [near] = (subject === undefined ? [] : board.handles(subject))
      .filter((grip) => distance(grip.at, at) <= board.pixels(gripPixels))
      .filter((grip) => grip.kind !== 'size' || !isDeepInside(grip, board.inPlan(at)))
      .sort((a, b) => distance(a.at, at) - distance(b.at, at));
    if (near !== undefined) return near;
    // Division lines and the signs of findings lie over things, but can't be moved.
    const uppermost = document
      .elementsFromPoint(x, y)
      .map((element) => element.closest('[data-subject]')?.getAttribute('data-subject') ?? '')
      .find((each) => board.whole(each) !== undefined);
    if (uppermost === undefined || (pointerType === 'touch' && uppermost !== subject)) return undefined;
    return board.whole(uppermost);
  }

  #focused(target: EventTarget | null): void {
    if (!(target instanceof Element)) return;
    const subject = target.closest('.outlines [data-subject]')?.getAttribute('data-subject');
    if (subject && subject !== this.#subject && this.#host.board.whole(subject)) this.select(subject);
  }

  #thing(): MarkedThing | undefined {
    const subject = this.#subject;
    const whole = subject === undefined ? undefined : this.#host.board.whole(subject);
    if (subject === undefined || whole === undefined) return undefined;
    const kind = whole.kind === 'object' || whole.kind === 'focus' ? whole.kind : 'other';
    return { subject, kind, name: whole.name };
  }
}
