import { distance, type Point } from '../../plan/geometry/point.js';
import type { Lead } from '../../plan/plan.js';
import { type Frame, onLater } from './frame.js';
import { LEAST_MOVE, type Move, moveBetween } from './move.js';

/** How a lead runs otherwise: how far its ends have moved, where they have. */
export interface LeadChange {
  readonly start?: Move;
  readonly end?: Move;
}

/**
 * Nothing where the lead runs as it did; one that aims at the focal point follows it, which is no change of the lead.
 */
export function compareLeads(earlier: Lead, later: Lead, frame: Frame): LeadChange | undefined {
  const follows = earlier.to.names === 'focus' && later.to.names === 'focus';
  const own = ({ points }: Lead): readonly Point[] => (follows ? points.slice(0, -1) : points);
  const before = own(earlier).map((point) => onLater(frame, point));
  const now = own(later);
  const most = LEAST_MOVE * frame.canvas.diagonal;
  const isSame =
    before.length === now.length &&
    now.every((point, index) => distance(point, before[index] ?? point) < most);
  if (isSame) return undefined;
  const moved = (from: Point | undefined, to: Point | undefined) =>
    from && to ? moveBetween(from, to, most) : undefined;
  const start = moved(before[0], now[0]);
  const end = follows ? undefined : moved(before.at(-1), now.at(-1));
  return { ...(start ? { start } : {}), ...(end ? { end } : {}) };
}
