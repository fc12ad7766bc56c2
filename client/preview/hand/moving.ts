import { t } from '../../../grammar/localised.js';
import type { Scene, Spot } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import type { Board } from './board.js';
import { budgetChanges } from './budget-changes.js';
import { Drag, type DragManner, guidesFor } from './drag.js';
import { type Grip, onlyWay, putDown } from './grips.js';
import { steps } from './lengths.js';
import type { Overlay } from './overlay.js';
import { difference, distance } from './place.js';
import type { Readout } from './readout.js';
import { beginMove, moveInWords, movedName, showMove } from './shown-move.js';
import { anchorsOf, held } from './snap.js';

/** A click is not quite still. */
const stillPixels = 3;
/** The bit of `PointerEvent.buttons` for the button that drags, or a finger or pen that touches. */
const primaryButton = 1;

export interface MovingHost {
  readonly board: Board;
  readonly overlay: Overlay;
  readonly readout: Readout;
  readonly place: HTMLElement;
  /** What a pointer that comes down there would move. */
  readonly gripAt: (event: PointerEvent) => Grip | undefined;
  readonly snaps: () => boolean;
  /** It was pressed and let go of where it is. */
  readonly clicked: (grip: Grip) => void;
  /** It moves from now on. */
  readonly begun: (grip: Grip) => void;
  readonly attempt: (change: HandChange) => void;
  readonly write: (change: HandChange) => void;
  /** Nothing is written: the drawing is to be as it was. */
  readonly letGo: () => void;
}

type Held =
  | { readonly state: 'pressed'; readonly pointer: number; readonly grip: Grip; readonly from: Spot }
  | { readonly state: 'moving'; readonly pointer: number; readonly drag: Drag };

/** Dragging with a mouse, a pen or a finger. */
export class Moving {
  readonly #host: MovingHost;
  #held: Held | undefined;
  #last: PointerEvent | undefined;
  #frame: number | undefined;
  #budgets: readonly string[] = [];
  /** The click that ends a drag is not one. */
  #swallowsClick = false;

  constructor(host: MovingHost) {
    this.#host = host;
    const { place } = host;
    const listen = <K extends keyof HTMLElementEventMap>(
      type: K,
      heard: (event: HTMLElementEventMap[K]) => void,
    ): void => place.addEventListener(type, heard, { capture: true });
    listen('pointerdown', (event) => this.#press(event));
    listen('pointermove', (event) => this.#move(event));
    listen('pointerup', (event) => this.#release(event));
    listen('pointercancel', (event) => {
      if (event.pointerId === this.#held?.pointer) this.cancel();
    });
    listen('lostpointercapture', (event) => {
      // A finger is caught by what it touches first, which loses it to the place when a drag begins.
      if (event.target === place && event.pointerId === this.#held?.pointer) this.cancel();
    });
    listen('click', (event) => {
      if (this.#swallowsClick) event.stopPropagation();
      this.#swallowsClick = false;
    });
    // A finger that has hold of something does not scroll the page.
    place.addEventListener(
      'touchmove',
      (event) => {
        if (this.#held !== undefined && event.cancelable) event.preventDefault();
      },
      { passive: false },
    );
  }

  get drag(): Drag | undefined {
    return this.#held?.state === 'moving' ? this.#held.drag : undefined;
  }

  /** What is held goes back. False when nothing is. */
  cancel(): boolean {
    const wasMoving = this.#held?.state === 'moving';
    const wasHeld = this.#held !== undefined;
    this.#end();
    if (wasMoving) {
      this.#swallowsClick = true;
      this.#host.letGo();
    }
    return wasHeld;
  }

  /** The text has changed meanwhile: the drag goes on over the new drawing, if what it holds is there. */
  goOn(): void {
    const { drag } = this;
    if (drag === undefined) return;
    const { board, readout } = this.#host;
    const grip = board.grip(drag.grip.key);
    if (grip === undefined || grip.fixed !== undefined) {
      this.cancel();
      readout.refuse(grip?.fixed ?? t('{0} is not in the drawing any more.', drag.grip.name));
      return;
    }
    drag.continueOn(grip, guidesFor(grip, board.guides), this.#manner(grip));
    this.#begin(drag);
    this.#show(drag);
  }

  /** How the drawing would be, as far as the hand has come. */
  tried(scene: Scene): void {
    this.#budgets = budgetChanges(this.#host.board.scene?.budgets ?? [], scene.budgets);
    if (this.drag !== undefined) this.#tell(this.drag);
  }

  #press(event: PointerEvent): void {
    this.#swallowsClick = false;
    const isFirst = event.button === 0 && event.isPrimary && !isForPanning(event, this.#host.place);
    if (!isFirst || this.#held?.state === 'moving') return;
    this.#end();
    const grip = this.#host.gripAt(event);
    const from = this.#host.board.under({ x: event.clientX, y: event.clientY });
    if (grip === undefined || from === undefined) return;
    event.stopPropagation();
    this.#last = event;
    this.#held = {
      state: 'pressed',
      pointer: event.pointerId,
      grip,
      from: { x: event.clientX, y: event.clientY },
    };
  }

  #move(event: PointerEvent): void {
    const holding = this.#held;
    if (holding?.pointer !== event.pointerId) return;
    if (holding.state === 'pressed' && (event.buttons & primaryButton) === 0) {
      // It was let go of beside the drawing, which hears of that only once a drag has begun.
      this.#end();
      return;
    }
    // It is held here, and moves nothing else.
    event.stopPropagation();
    this.#last = event;
    if (holding.state === 'pressed') {
      if (distance(holding.from, { x: event.clientX, y: event.clientY }) < stillPixels) return;
      if (!this.#take(holding)) return;
    }
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = undefined;
      this.#follow();
    });
  }

  #take({ pointer, grip, from }: Held & { state: 'pressed' }): boolean {
    const { board, place, readout } = this.#host;
    const start = board.under(from);
    if (grip.fixed !== undefined || start === undefined) {
      this.#end();
      if (grip.fixed !== undefined) readout.refuse(grip.fixed);
      return false;
    }
    const anchors = grip.kind === 'object' ? anchorsOf(grip.at, board.boxOf(grip.subject)) : [held];
    const drag = new Drag({ grip, start, anchors });
    this.#held = { state: 'moving', pointer, drag };
    place.setPointerCapture(pointer);
    place.classList.add('dragging');
    this.#budgets = [];
    this.#host.begun(grip);
    this.#begin(drag);
    return true;
  }

  #begin({ grip }: Drag): void {
    const { board, overlay } = this.#host;
    overlay.clear();
    beginMove(board, overlay, grip);
  }

  /** Shift keeps a move straight, and a size in its proportion. */
  get #withShift(): boolean {
    return this.#last?.shiftKey ?? false;
  }

  #manner(grip: Grip): DragManner {
    const event = this.#last;
    const isFree = event !== undefined && (event.ctrlKey || event.metaKey);
    const { board, snaps } = this.#host;
    const reach = snaps() && !isFree ? board.snapReach : undefined;
    const step = isFree ? undefined : steps[board.unit].small;
    if (grip.kind !== 'size') return { isStraight: this.#withShift, reach, step };
    const only = onlyWay(grip, this.#withShift);
    if (only === undefined) return { isStraight: false, reach, step };
    const along = step === undefined ? undefined : step * only.perUnit;
    return { isStraight: false, way: board.wayInPlan(only.way), reach, step: along };
  }

  #follow(): void {
    const { drag } = this;
    const event = this.#last;
    if (drag === undefined || event === undefined) return;
    const { board } = this.#host;
    const pointer = board.under({ x: event.clientX, y: event.clientY });
    if (pointer === undefined) return;
    drag.moveTo(pointer, guidesFor(drag.grip, board.guides), this.#manner(drag.grip));
    this.#show(drag);
  }

  #show(drag: Drag): void {
    const { attempt, board, overlay } = this.#host;
    const { grip, snapped, by } = drag;
    showMove(board, overlay, grip, snapped.at, this.#withShift);
    if (grip.kind !== 'size') overlay.showTrace(difference(snapped.at, by), snapped.at);
    overlay.showSnap(snapped.mark);
    attempt(putDown(grip, board.inPlan(snapped.at), this.#withShift));
    this.#tell(drag);
  }

  #tell({ grip, snapped }: Drag): void {
    const { board, readout } = this.#host;
    const way = moveInWords(board, grip, snapped.at, this.#withShift);
    const { words } = snapped;
    if (this.#last !== undefined)
      readout.beside({ x: this.#last.clientX, y: this.#last.clientY }, [
        way,
        ...(words === undefined ? [] : [words]),
        ...this.#budgets,
      ]);
    readout.say(
      `${[`${movedName(grip)} ${way}`, ...(words === undefined ? [] : [words]), ...this.#budgets].join('; ')}.`,
    );
  }

  #release(event: PointerEvent): void {
    const holding = this.#held;
    if (holding?.pointer !== event.pointerId) return;
    if (holding.state === 'pressed') {
      this.#end();
      this.#host.clicked(holding.grip);
      return;
    }
    event.stopPropagation();
    this.#last = event;
    this.#follow();
    const { drag } = holding;
    this.#end();
    this.#swallowsClick = true;
    const { board, letGo, readout, write } = this.#host;
    readout.away();
    if (drag.by.x === 0 && drag.by.y === 0) letGo();
    else write(putDown(drag.grip, board.inPlan(drag.snapped.at), this.#withShift));
  }

  #end(): void {
    const holding = this.#held;
    this.#held = undefined;
    if (this.#frame !== undefined) cancelAnimationFrame(this.#frame);
    this.#frame = undefined;
    this.#host.place.classList.remove('dragging');
    if (holding?.state === 'moving' && this.#host.place.hasPointerCapture(holding.pointer))
      this.#host.place.releasePointerCapture(holding.pointer);
  }
}

/** Whether the page takes the pointer, to draw the drawing along. */
export function isForPanning(event: Event, place: HTMLElement): boolean {
  return event.defaultPrevented || place.classList.contains('can-pan');
}
