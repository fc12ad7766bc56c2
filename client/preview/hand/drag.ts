import type { Grip, Guides, Spot } from '../../../server/drawing/scene.js';
import { difference, sum } from './place.js';
import { type Anchor, type Axis, type Snapped, snap } from './snap.js';

export interface DragParts {
  readonly grip: Grip;
  /** Where the pointer took hold, as a place of the plan. */
  readonly start: Spot;
  readonly anchors: readonly Anchor[];
}

/** What keys are held, and how far snapping reaches. */
export interface DragManner {
  /** Kept to the direction in which it has gone further. */
  readonly isStraight: boolean;
  /** Canvas units; nothing snaps without it. */
  readonly reach: number | undefined;
}

/** A grip that is being dragged, in places of the plan. */
export class Drag {
  readonly start: Spot;
  readonly anchors: readonly Anchor[];
  #grip: Grip;
  /** Where the grip was drawn when it was taken hold of. */
  readonly from: Spot;
  #pointer: Spot;
  #snapped: Snapped;

  constructor({ grip, start, anchors }: DragParts) {
    this.start = start;
    this.anchors = anchors;
    this.#grip = grip;
    this.from = grip.at;
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

  moveTo(pointer: Spot, guides: Guides, { isStraight, reach }: DragManner): Snapped {
    this.#pointer = pointer;
    const free = difference(pointer, this.start);
    const only = isStraight ? furtherOf(free) : undefined;
    const at = sum(this.#grip.at, only === undefined ? free : along(free, only));
    this.#snapped = reach === undefined ? { at } : snap(at, guides, reach, this.anchors, only);
    return this.#snapped;
  }

  /** Goes on with the same grip of another drawing. */
  continueOn(grip: Grip, guides: Guides, manner: DragManner): Snapped {
    this.#grip = grip;
    return this.moveTo(this.#pointer, guides, manner);
  }
}

function furtherOf({ x, y }: Spot): Axis {
  return Math.abs(x) >= Math.abs(y) ? 'across' : 'down';
}

function along({ x, y }: Spot, axis: Axis): Spot {
  return axis === 'across' ? { x, y: 0 } : { x: 0, y };
}

/** Of a drawing, the guides for one grip: the focal point too, but for the focal point itself. */
export function guidesFor(grip: Grip, guides: Guides, grips: readonly Grip[]): Guides {
  const focus = grip.kind === 'focus' ? undefined : grips.find(({ kind }) => kind === 'focus');
  if (focus === undefined) return guides;
  const isNamed = guides.crossings.some(({ at }) => at.x === focus.at.x && at.y === focus.at.y);
  return isNamed
    ? guides
    : { ...guides, crossings: [...guides.crossings, { at: focus.at, name: 'the focal point' }] };
}
