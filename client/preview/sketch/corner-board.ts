import { t } from '../../../grammar/localised.js';
import { sketchCorners, type Spot } from '../../../server/drawing/scene.js';
import { element, svgElement } from '../elements.js';
import { handleElement, placeDots } from '../hand/dots.js';
import { arrowWay } from '../hand/keys.js';
import { difference, distance, onDrawing, sum, unitsPerPixel } from '../hand/place.js';
import {
  cornerInWords,
  type CornerPlaces,
  type Placeable,
  placeables,
  seenBox,
  stepIn,
  withinReach,
} from './corner-places.js';
import { Loupe } from './loupe.js';
import type { Size } from './sketch-squaring.js';

/** A sketch as it was taken. */
export interface Taken extends Size {
  readonly url: string;
}

/** Pixels of the screen round a handle that belong to it. */
const handlePixels = 22;

interface Held {
  readonly corner: Placeable;
  readonly pointer: number;
  /** From the pointer to the corner. */
  readonly off: Spot;
}

/** The sketch as it was taken, with a handle on each corner of the canvas in it. */
export class CornerBoard {
  readonly figure: HTMLElement;
  readonly #put: (corner: Placeable, to: Spot, size: Size) => void;
  readonly #greyTaken: () => void;
  readonly #svg = svgElement('svg', {
    role: 'group',
    'aria-label': t(
      'As it was taken. Arrow keys move the corner that has the focus, with Shift in large steps.',
    ),
  });
  readonly #image = svgElement('image', { 'aria-hidden': 'true' });
  readonly #sheet = svgElement('g', { class: 'frame', 'aria-hidden': 'true' });
  readonly #handles = new Map(
    placeables.map((corner) => [
      corner,
      handleElement({ tabindex: '0', 'data-kind': 'point', 'data-place': corner }),
    ]),
  );
  readonly #loupe = new Loupe();
  #taken: Taken | undefined;
  /** As the text has them, and where they were put that is not in the text yet. */
  #written: CornerPlaces = new Map();
  #moved: CornerPlaces = new Map();
  #held: Held | undefined;
  #asksForGrey = false;

  /**
   * @param put a corner was put down at a place in a sketch of that size, in its pixels
   * @param greyTaken the click on the grey patch that was waited for has come
   */
  constructor(put: (corner: Placeable, to: Spot, size: Size) => void, greyTaken: () => void) {
    this.#put = put;
    this.#greyTaken = greyTaken;
    this.#sheet.append(svgElement('path', { class: 'bed' }), svgElement('path', { class: 'line' }));
    const hand = svgElement('g', { class: 'hand' });
    hand.append(this.#sheet, ...this.#handles.values());
    this.#svg.append(this.#image, hand);
    this.figure = element('div', { class: 'corner-board' }, this.#svg, this.#loupe.svg);
    this.#svg.addEventListener('pointerdown', (event) => this.#press(event));
    this.#svg.addEventListener('pointermove', (event) => this.#pull(event));
    this.#svg.addEventListener('pointerup', (event) => this.#release(event));
    for (const ending of ['pointercancel', 'lostpointercapture'] as const)
      this.#svg.addEventListener(ending, () => this.#cancel());
    // A finger that has hold of a corner does not scroll the page.
    this.#svg.addEventListener(
      'touchmove',
      (event) => {
        if (this.#held !== undefined && event.cancelable) event.preventDefault();
      },
      { passive: false },
    );
    this.#svg.addEventListener('keydown', (event) => this.#key(event));
    this.#svg.addEventListener('focusin', () => this.#patch());
    this.#svg.addEventListener('focusout', () => this.#patch());
  }

  show(taken: Taken, written: CornerPlaces): void {
    this.#taken = taken;
    this.#written = written;
    const { url, width, height } = taken;
    for (const [name, value] of Object.entries({ href: url, width, height }))
      this.#image.setAttribute(name, String(value));
    this.#loupe.show(taken);
    this.#patch();
  }

  /** Whether the next click says where the grey patch is. */
  get asksForGrey(): boolean {
    return this.#asksForGrey;
  }

  /**
   * Waits for a click on the grey patch, or no longer.
   * @param byKeys puts its handle where it is, or in the middle, to be moved by arrow keys
   */
  askForGrey(isAsked: boolean, byKeys = false): void {
    this.#asksForGrey = isAsked && !byKeys;
    this.figure.classList.toggle('asks', this.#asksForGrey);
    if (!isAsked || !byKeys || this.#taken === undefined) return;
    const { width, height } = this.#taken;
    if (!this.#places.has('grey')) {
      this.#move('grey', { x: width / 2, y: height / 2 }, this.#taken);
      this.#write('grey');
    }
    this.#handles.get('grey')?.focus({ preventScroll: true });
  }

  /** What was put down is in the text now, or will not be. */
  settle(): void {
    const held = this.#held?.corner;
    this.#moved = new Map([...this.#moved].filter(([corner]) => corner === held));
    this.#patch();
  }

  get #places(): CornerPlaces {
    return new Map([...this.#written, ...this.#moved]);
  }

  #patch(): void {
    const taken = this.#taken;
    if (taken === undefined) return;
    const places = this.#places;
    // What is seen does not change under the hand.
    if (this.#held === undefined) {
      const { x, y, width, height } = seenBox(taken, places);
      this.#svg.setAttribute('viewBox', `${x} ${y} ${width} ${height}`);
      this.figure.style.setProperty('--across', (width / height).toFixed(4));
    }
    const around = sketchCorners.flatMap((corner) => places.get(corner) ?? []);
    const d = `M${around.map(({ x, y }) => `${x} ${y}`).join('L')}Z`;
    for (const path of this.#sheet.children) path.setAttribute('d', d);
    for (const [corner, handle] of this.#handles) {
      const at = places.get(corner);
      handle.toggleAttribute('hidden', at === undefined);
      if (at === undefined) continue;
      placeDots(handle, at);
      handle.setAttribute('aria-label', cornerInWords(corner, at));
    }
    const looked = this.#held?.corner ?? this.#focused;
    this.#loupe.look(looked === undefined ? undefined : places.get(looked), d);
  }

  get #focused(): Placeable | undefined {
    return placeables.find((corner) => this.#handles.get(corner) === document.activeElement);
  }

  #move(corner: Placeable, at: Spot, size: Size): void {
    this.#moved = new Map([...this.#moved, [corner, withinReach(at, size)]]);
    this.#patch();
  }

  #press(event: PointerEvent): void {
    const matrix = this.#svg.getScreenCTM();
    if (event.button !== 0 || !event.isPrimary || this.#held !== undefined || matrix === null) return;
    const under = onDrawing({ x: event.clientX, y: event.clientY }, matrix);
    if (this.#asksForGrey && this.#taken !== undefined) {
      event.preventDefault();
      this.askForGrey(false);
      this.#move('grey', under, this.#taken);
      this.#write('grey');
      this.#greyTaken();
      return;
    }
    const reach = handlePixels * unitsPerPixel(matrix);
    const [near] = [...this.#places]
      .filter(([, at]) => distance(at, under) <= reach)
      .sort(([, one], [, other]) => distance(one, under) - distance(other, under));
    if (near === undefined) return;
    event.preventDefault();
    const [corner, at] = near;
    this.#held = { corner, pointer: event.pointerId, off: difference(at, under) };
    this.#svg.setPointerCapture(event.pointerId);
    this.#handles.get(corner)?.focus({ preventScroll: true });
    this.#patch();
  }

  #pull(event: PointerEvent): void {
    const held = this.#held;
    const taken = this.#taken;
    const matrix = this.#svg.getScreenCTM();
    if (held?.pointer !== event.pointerId || taken === undefined || matrix === null) return;
    const under = onDrawing({ x: event.clientX, y: event.clientY }, matrix);
    this.#move(held.corner, sum(under, held.off), taken);
  }

  #release(event: PointerEvent): void {
    const held = this.#held;
    if (held?.pointer !== event.pointerId) return;
    this.#held = undefined;
    this.#write(held.corner);
  }

  #write(corner: Placeable): void {
    const to = this.#moved.get(corner);
    this.#patch();
    if (to !== undefined && this.#taken !== undefined) this.#put(corner, to, this.#taken);
  }

  #cancel(): void {
    const held = this.#held;
    if (held === undefined) return;
    this.#held = undefined;
    this.#moved = new Map([...this.#moved].filter(([corner]) => corner !== held.corner));
    this.#patch();
  }

  #key(event: KeyboardEvent): void {
    const corner = this.#focused;
    const taken = this.#taken;
    if (corner === undefined || taken === undefined || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Escape' && this.#held !== undefined) {
      event.preventDefault();
      this.#cancel();
      return;
    }
    const way = arrowWay(event.key);
    const at = this.#places.get(corner);
    if (way === undefined || at === undefined) return;
    event.preventDefault();
    const step = stepIn(taken, event.shiftKey);
    this.#move(corner, sum(at, { x: way.x * step, y: way.y * step }), taken);
    this.#write(corner);
  }
}
