import type { Defs, Dom } from '@svgdotjs/svg.js';
import { setAttributes } from './attributes.js';
import { number } from './path-data.js';
import { grown } from './picture/boxes.js';
import type { Box } from './scene.js';

interface Nodes {
  readonly filter: Dom;
  /** Cuts what is blurred down to the box. */
  readonly cut: Dom;
  readonly blur: Dom;
}

/**
 * A Gaussian blur of what lies in a box, in linear light, as the eye adds up light. What lies outside the box counts
 * for nothing, and neither does nothing: the blurred colours near the edge are those of the box alone, because the
 * blur works on colours weighted by their cover and the cover is then made whole again.
 */
export class BlurFilter {
  readonly #defs: Defs;
  readonly #id: string;
  #nodes: Nodes | undefined;

  constructor(defs: Defs, id: string) {
    this.#defs = defs;
    this.#id = id;
  }

  /**
   * Makes the filter ready for a box and a standard deviation, both in the user's units, or takes it away when there
   * is none. Gives the value of a `filter` attribute.
   * @param beyond by how much the filtered region reaches over the box: more than a pixel, so that the pixels along
   * its edge are whole; what is too much is to be clipped
   */
  apply(box: Box, beyond: number, deviation: number | undefined): string | undefined {
    if (deviation === undefined) {
      this.#nodes?.filter.remove();
      this.#nodes = undefined;
      return undefined;
    }
    this.#nodes ??= this.#make();
    setAttributes(this.#nodes.filter, region(grown(box, beyond)));
    setAttributes(this.#nodes.cut, region(box));
    setAttributes(this.#nodes.blur, { stdDeviation: number(deviation) });
    return `url(#${this.#id})`;
  }

  #make(): Nodes {
    const filter = this.#defs.element('filter');
    setAttributes(filter, {
      id: this.#id,
      filterUnits: 'userSpaceOnUse',
      'color-interpolation-filters': 'linearRGB',
    });
    const cut = filter.element('feMerge');
    setAttributes(cut.element('feMergeNode'), { in: 'SourceGraphic' });
    const blur = filter.element('feGaussianBlur');
    const whole = filter.element('feComponentTransfer');
    setAttributes(whole.element('feFuncA'), { type: 'linear', slope: '0', intercept: '1' });
    return { filter, cut, blur };
  }
}

function region({ x, y, width, height }: Box): Readonly<Record<string, string>> {
  return { x: number(x), y: number(y), width: number(width), height: number(height) };
}
