import { distance, type Point } from '../../plan/geometry/point.js';
import type { Lead } from '../../plan/plan.js';
import { LEAST_MOVE } from './focus.js';
import { type Frame, onLater } from './frame.js';

/** How a lead runs otherwise: how far its ends have moved, where they have. Units of the later canvas. */
export interface LeadChange {
  readonly start?: { readonly right: number; readonly down: number };
  readonly end?: { readonly right: number; readonly down: number };
}

/** Nothing where the lead runs as it did; one that aims at the focal point follows it, which is no change of the lead. */
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
  const start = moved(before[0], now[0], most);
  const end = follows ? undefined : moved(before.at(-1), now.at(-1), most);
  return { ...(start ? { start } : {}), ...(end ? { end } : {}) };
}

function moved(
  before: Point | undefined,
  now: Point | undefined,
  most: number,
): LeadChange['start'] | undefined {
  if (before === undefined || now === undefined || distance(before, now) < most) return undefined;
  return { right: now.x - before.x, down: now.y - before.y };
}
