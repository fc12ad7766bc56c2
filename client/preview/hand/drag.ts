import type { Guides, Spot } from '../../../server/drawing/scene.js';
import type { Grip } from './grips.js';
import { toStep } from './lengths.js';
import { difference, sum } from './place.js';
import { across, type Anchor, down, type Snapped, snap } from './snap.js';

export interface DragParts {
  readonly grip: Grip;
  /** Where the pointer took hold, as a place of the drawing. */
  readonly start: Spot;
  readonly anchors: readonly Anchor[];
}

/** What keys are held, and what a move keeps to. */
export interface DragManner {
  /** Kept to the direction in which it has gone further. */
  readonly isStraight: boolean;
  /** The only way that it goes, of length one. */
  readonly way?: Spot;
  /** Canvas units; nothing snaps without it. */
  readonly reach: number | undefined;
  /** Canvas units that ways are whole numbers of, where nothing snaps. */
  readonly step: number | undefined;
}

/** A grip that is being dragged, in places of the drawing. */
export class Drag {
  readonly #start: Spot;
  readonly #anchors: readonly Anchor[];
  #grip: Grip;
  #pointer: Spot;
  #snapped: Snapped;

  constructor({ grip, start, anchors }: DragParts) {
    this.#start = start;
    this.#anchors = anchors;
    this.#grip = grip;
    this.#pointer = start;
    this.#snapped = { at: grip.at };
  }

  get grip(): Grip {
    return this.#grip;
  }

  /** Where it would come to lie. */
  get snapped(): Snapped {
    return this.#snapped;
  }

  /** How far that is from where it was. */
  get by(): Spot {
    return difference(this.#snapped.at, this.#grip.at);
  }

  moveTo(pointer: Spot, guides: Guides, { isStraight, way, reach, step }: DragManner): Snapped {
    this.#pointer = pointer;
    const come = difference(pointer, this.#start);
    const only = way ?? (isStraight ? furtherOf(come) : undefined);
    const by =
      only === undefined
        ? { x: toStep(come.x, step), y: toStep(come.y, step) }
        : times(only, toStep(come.x * only.x + come.y * only.y, step));
    const at = sum(this.#grip.at, by);
    this.#snapped = reach === undefined ? { at } : snap(at, guides, reach, this.#anchors, only);
    return this.#snapped;
  }

  /** Goes on with the same grip of another drawing. */
  continueOn(grip: Grip, guides: Guides, manner: DragManner): Snapped {
    this.#grip = grip;
    return this.moveTo(this.#pointer, guides, manner);
  }
}

function furtherOf({ x, y }: Spot): Spot {
  return Math.abs(x) >= Math.abs(y) ? across : down;
}

function times({ x, y }: Spot, length: number): Spot {
  return { x: x * length, y: y * length };
}

/** How the server names the focal point among the crossings, when it lies on none of the division. */
const focalPoint = 'focal point';

/** The guides for one grip: the focal point is none for itself. */
export function guidesFor(grip: Grip, guides: Guides): Guides {
  if (grip.kind !== 'focus') return guides;
  return { ...guides, crossings: guides.crossings.filter(({ name }) => name !== focalPoint) };
}
