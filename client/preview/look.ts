import type { View } from '../../server/drawing/scene.js';

/**
 * How a plan is looked at: the view, for a squint from how far and for the record which sitting where that was
 * chosen, and whether there is little room across.
 */
export interface Look {
  readonly view: View;
  readonly distanceMillimetres?: number | undefined;
  /** The sitting that the view `record` shows, by its index in the plan; the latest where none was chosen. */
  readonly sitting?: number | undefined;
  readonly isNarrow?: boolean | undefined;
}
