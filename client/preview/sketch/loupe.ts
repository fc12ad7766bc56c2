import type { Spot } from '../../../server/drawing/scene.js';
import { svgElement } from '../elements.js';
import type { Size } from './sketch-squaring.js';

/** Part of the longer side of a sketch that is seen through the loupe. */
const SEEN = 0.06;

/** A small part of the sketch, larger, so that a corner is found to a pixel. */
export class Loupe {
  readonly svg = svgElement('svg', { class: 'loupe hand', 'aria-hidden': 'true' });
  readonly #image = svgElement('image');
  readonly #sheet = svgElement('g', { class: 'frame' });
  #seen = 0;

  constructor() {
    this.#sheet.append(svgElement('path', { class: 'bed' }), svgElement('path', { class: 'line' }));
    this.svg.append(this.#image, this.#sheet);
    this.svg.toggleAttribute('hidden', true);
  }

  show({ url, width, height }: Size & { readonly url: string }): void {
    this.#seen = SEEN * Math.max(width, height);
    for (const [name, value] of Object.entries({ href: url, width, height }))
      this.#image.setAttribute(name, String(value));
  }

  /**
   * Looks at a place of the sketch, or at none.
   * @param d the lines between the corners
   */
  look(at: Spot | undefined, d: string): void {
    this.svg.toggleAttribute('hidden', at === undefined);
    if (at === undefined) return;
    const half = this.#seen / 2;
    this.svg.setAttribute('viewBox', `${at.x - half} ${at.y - half} ${this.#seen} ${this.#seen}`);
    for (const path of this.#sheet.children) path.setAttribute('d', d);
  }
}
