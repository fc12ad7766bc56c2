import type { Layer } from '../../../grammar/index.js';
import type { Plan } from '../../plan/plan.js';
import type { PaletteMeasure } from '../mixing/mixing.js';
import type { LaidPaint } from './drying.js';

/**
 * What a layer is painted with on an object: its own mixture; for a glaze the paints of the glaze, where the plan has
 * one for it; for a toned ground the mixture of the ground. Unsettled while a palette is there and its mixtures are
 * not.
 */
export function paintLaid(
  plan: Plan,
  palette: PaletteMeasure | undefined,
  layer: Layer,
  object: number,
): LaidPaint {
  if (layer === 'varnish' || plan.palette === undefined || plan.palette.paints.length === 0) return 'unknown';
  const mixing = palette?.mixing;
  if (mixing === undefined) return 'unsettled';
  const ofObject = mixing.swatches[mixing.ofObjects[object] ?? -1]?.mixture;
  switch (layer) {
    case 'imprimatura':
      return mixing.swatches.find(({ isGround }) => isGround)?.mixture?.parts ?? 'unknown';
    case 'glaze':
      return (mixing.glazes[object]?.mixture ?? ofObject)?.parts ?? 'unknown';
    case 'underpainting':
    case 'block-in':
    case 'body colour':
    case 'scumble':
    case 'detail':
      return ofObject?.parts ?? 'unknown';
  }
}
