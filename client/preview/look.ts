import type { View } from '../../server/drawing/scene.js';

/** How a plan is looked at: the view, and for a squint from how far, where that was chosen. */
export interface Look {
  readonly view: View;
  readonly distanceMillimetres?: number | undefined;
}
