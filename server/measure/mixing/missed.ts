import { labDifference } from '../../plan/colour/difference.js';
import type { Lab } from '../../plan/colour/model.js';
import { opaqueSpectrum } from './kubelka-munk.js';
import { labOfSpectrum } from './spectra/bands.js';
import { MEASURED_PAINTS } from './spectra/measured.js';

let darkest: number | undefined;

/** L* of the darkest full tone that was measured, Munsell value about 1.9. */
function darkestMeasured(): number {
  return (darkest ??= Math.min(
    ...MEASURED_PAINTS.map(
      ({ k, s }) => labOfSpectrum(opaqueSpectrum({ k: Float64Array.from(k), s: Float64Array.from(s) }))[0],
    ),
  ));
}

/**
 * By how much a mixture misses a colour, CIEDE2000, in judging whether a palette can give it. What the surface of the
 * paint sends back was measured too, and no measured paint is darker than value 1.9, while a glossy or varnished one
 * looks darker than that; so a colour that is wanted darker is judged as if it were wanted at that lightness. Every
 * palette would miss the darks of a picture otherwise.
 */
export function missedBy(wanted: Lab, mixture: Lab): number {
  return labDifference(lifted(wanted), mixture);
}

/** A colour at the lightness at which it is judged. */
export function lifted([lightness, a, b]: Lab): Lab {
  return [Math.max(lightness, darkestMeasured()), a, b];
}
