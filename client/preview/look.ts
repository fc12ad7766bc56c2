import type { View } from '../../server/drawing/scene.js';

/** How a plan is looked at: the view, for a squint from how far where that was chosen, and whether there is little room across. */
export interface Look {
  readonly view: View;
  readonly distanceMillimetres?: number | undefined;
  readonly isNarrow?: boolean | undefined;
}
