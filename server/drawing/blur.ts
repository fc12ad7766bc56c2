import type { Defs, Dom } from '@svgdotjs/svg.js';
import { setAttributes } from './attributes.js';
import { number } from './path-data.js';
import { grown } from './picture/boxes.js';
import type { Box } from './scene.js';

interface Nodes {
  readonly filter: Dom;
  /** Cuts what is blurred down to the box. */
  readonly cut: Dom;
  /** The blurs, the least first. */
  readonly blurs: readonly Dom[];
}

/** Along the edge, what the blur leaves open is filled by smaller ones, parts of it, that leave less and less open. */
const PARTS = [0.25, 0.55, 1] as const;

/**
 * A Gaussian blur of what lies in a box, in linear light, as the eye adds up light. What lies outside the box counts
 * for nothing: along the edge, where the blur leaves up to half open, it lies over smaller ones and those over the
 * thing itself. Making the cover whole by division instead would show in dark colours, because viewers count
 * light in 255 steps, of which a dark one has two or three.
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
    const { filter, cut, blurs } = this.#nodes;
    setAttributes(filter, region(grown(box, beyond)));
    setAttributes(cut, region(box));
    blurs.forEach((blur, index) =>
      setAttributes(blur, { stdDeviation: number((PARTS[index] ?? 1) * deviation) }),
    );
    return `url(#${this.#id})`;
  }

  #make(): Nodes {
    const filter = this.#defs.element('filter');
    setAttributes(filter, {
      id: this.#id,
      filterUnits: 'userSpaceOnUse',
      'color-interpolation-filters': 'linearRGB',
    });
    const cut = layersOver(filter, ['SourceGraphic'], 'cut');
    const blurs = PARTS.map((part) => {
      const blur = filter.element('feGaussianBlur');
      setAttributes(blur, { in: 'cut', result: `blur-${part}` });
      return blur;
    });
    layersOver(filter, ['cut', ...PARTS.map((part) => `blur-${part}`)], 'whole');
    // The pixels that the edge runs through.
    const full = filter.element('feComponentTransfer');
    setAttributes(full.element('feFuncA'), { type: 'linear', slope: '0', intercept: '1' });
    return { filter, cut, blurs };
  }
}

function layersOver(filter: Dom, layers: readonly string[], result: string): Dom {
  const merge = filter.element('feMerge');
  setAttributes(merge, { result });
  for (const layer of layers) setAttributes(merge.element('feMergeNode'), { in: layer });
  return merge;
}

function region({ x, y, width, height }: Box): Readonly<Record<string, string>> {
  return { x: number(x), y: number(y), width: number(width), height: number(height) };
}
