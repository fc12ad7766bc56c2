import type { Focus } from '../../plan/plan.js';
import { type Frame, onLater } from './frame.js';
import { LEAST_MOVE, type Move, moveBetween } from './move.js';

/** How far the focal point has moved; nothing where it lies as it did. */
export function compareFocus(earlier: Focus, later: Focus, frame: Frame): Move | undefined {
  return moveBetween(onLater(frame, earlier.at), later.at, LEAST_MOVE * frame.canvas.diagonal);
}
