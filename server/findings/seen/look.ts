import type { Colour } from '../../plan/colour/colour.js';
import { toMunsell } from '../../plan/colour/munsell.js';

/**
 * Tells colours apart that nothing else does, whatever they are called and wherever they stand on the palette: the
 * darker one first, of those as dark by hue round Munsell's circle, greys first, then the greyer one.
 */
export function byLook(one: Colour, other: Colour): number {
  const [a, b] = [toMunsell(one), toMunsell(other)];
  return a.value - b.value || (a.hueDegrees ?? -1) - (b.hueDegrees ?? -1) || a.chroma - b.chroma;
}
