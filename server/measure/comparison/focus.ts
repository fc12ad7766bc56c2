import type { Focus } from '../../plan/plan.js';
import { type Frame, onLater } from './frame.js';

/** How far the focal point has moved, in units of the later canvas; nothing where it lies as it did. */
export function compareFocus(
  earlier: Focus,
  later: Focus,
  frame: Frame,
): { readonly right: number; readonly down: number } | undefined {
  const before = onLater(frame, earlier.at);
  const [right, down] = [later.at.x - before.x, later.at.y - before.y];
  return Math.hypot(right, down) < LEAST_MOVE * frame.canvas.diagonal ? undefined : { right, down };
}

/** Part of the diagonal that can't be seen. */
export const LEAST_MOVE = 0.001;
