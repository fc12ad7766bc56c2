import type { Spot } from '../../../server/drawing/scene.js';
import type { HandChange } from '../../../server/language/hand/change.js';
import type { Board } from './board.js';
import type { Grip } from './grips.js';
import { askedBy } from './keys.js';
import type { Overlay } from './overlay.js';
import { sum } from './place.js';
import type { Readout } from './readout.js';
import { beginMove, moveInWords, movedName, showMove } from './shown-move.js';
import type { WriteQueue } from './write-queue.js';

export interface KeyboardHost {
  readonly board: Board;
  readonly overlay: Overlay;
  readonly readout: Readout;
  readonly place: HTMLElement;
  readonly writes: WriteQueue;
  readonly write: (change: HandChange) => void;
  /** Takes the last change of the text back, or makes it again. */
  readonly step: (to: 'undo' | 'redo') => void;
}

/** Moving things by keys. What is pressed is seen at once, and written as soon as the text is ready for it. */
export class Keyboard {
  readonly #host: KeyboardHost;
  /** How far keys have moved something since it was last still. */
  #nudged: { readonly key: string; readonly by: Spot } | undefined;

  constructor(host: KeyboardHost) {
    this.#host = host;
  }

  /** True when the key was for a thing of the drawing. */
  press(event: KeyboardEvent): boolean {
    const { board, overlay, place, readout, step, write } = this.#host;
    const handle = overlay.focusedGrip;
    const asked = askedBy(event, handle === undefined ? 'thing' : 'handle', board.unit);
    if (asked === undefined) return false;
    if (asked.kind === 'step') {
      step(asked.to);
      return true;
    }
    const thing = place.querySelector('.outlines g:focus')?.getAttribute('data-subject');
    const subject = handle === undefined ? thing : board.grip(handle)?.subject;
    if (!subject) return false;
    readout.settle();
    switch (asked.kind) {
      case 'nudge':
        return this.#nudge(handle === undefined ? board.whole(subject) : board.grip(handle), asked.by);
      case 'resize':
        if (board.whole(subject)?.kind !== 'object') return false;
        write({ kind: 'resize', subject, factor: asked.factor });
        return true;
      case 'next handle':
        return this.#nextHandle(subject, handle, asked.back);
      case 'leave handle':
        return board.surface.focus(subject);
    }
  }

  /**
   * Another drawing is there: what keys have moved is shown where it will be, although the text does not say so yet.
   */
  show(): void {
    const { board, overlay, writes } = this.#host;
    const grip = this.#nudged === undefined ? undefined : board.grip(this.#nudged.key);
    // What was on the page when the key was pressed may have had another size.
    if (grip?.kind === 'size') this.#tell(grip, this.#put(grip));
    if (!writes.busy || grip === undefined) {
      this.#nudged = undefined;
      return;
    }
    beginMove(board, overlay, grip);
    showMove(board, overlay, grip, this.#put(grip), false);
  }

  forget(): void {
    this.#nudged = undefined;
  }

  #nudge(grip: Grip | undefined, by: Spot): boolean {
    if (grip === undefined) return false;
    const { board, readout, writes } = this.#host;
    if (grip.fixed !== undefined) {
      readout.refuse(grip.fixed);
      return true;
    }
    const before = this.#nudged?.key === grip.key ? this.#nudged.by : { x: 0, y: 0 };
    this.#nudged = { key: grip.key, by: sum(before, by) };
    writes.add({ kind: 'nudge', grip: grip.key, by: board.wayInPlan(by) });
    if (grip.kind !== 'size') this.#tell(grip, sum(grip.at, this.#nudged.by));
    this.show();
    return true;
  }

  #tell(grip: Grip, at: Spot): void {
    const { board, readout } = this.#host;
    readout.say(`${movedName(grip)} ${moveInWords(board, grip, at, false)}.`);
  }

  /** Where a grip will be when all is written. */
  #put(grip: Grip): Spot {
    const { board, writes } = this.#host;
    return sum(grip.at, board.wayInPlan(writes.outstanding(grip.key)));
  }

  #nextHandle(subject: string, from: string | undefined, back: boolean): boolean {
    const handles = this.#host.board.handles(subject);
    if (handles.length === 0) return false;
    const at = handles.findIndex(({ key }) => key === from);
    const first = back ? handles.length - 1 : 0;
    const next = at < 0 ? first : (at + (back ? -1 : 1) + handles.length) % handles.length;
    const grip = handles[next];
    if (grip !== undefined) this.#host.overlay.focusGrip(grip.key);
    return true;
  }
}
