import { meetingsOf } from '../../plan/division-meetings.js';
import { distance, type Point } from '../../plan/geometry/point.js';
import type { Crossing, Division, Plan } from '../../plan/plan.js';
import { containsPoint, type SeenAreas } from '../areas/areas.js';
import { type FocusMeasure, awayFromFocus } from './at-focus.js';

/** Part of the diagonal by which the focal point may miss a border through rounding and lie on it. */
const ROUNDING = 1e-6;

/** Where the centre of interest lies; nothing for a plan that states none. */
export function measureFocus(plan: Plan, areas: SeenAreas): FocusMeasure | undefined {
  const { canvas, focus } = plan;
  if (!focus) return undefined;
  const nearest = nearestCrossing(plan.divisions, focus.at);
  const meeting = plan.divisions
    .flatMap((division) => meetingsOf(division, canvas))
    .reduce((least, at) => Math.min(least, distance(at, focus.at)), Infinity);
  const middle = { x: canvas.width / 2, y: canvas.height / 2 };
  return {
    ...(nearest ? { nearest: { ...nearest, distanceShare: nearest.distance / canvas.diagonal } } : {}),
    ...(Number.isFinite(meeting) ? { fromMeeting: meeting / canvas.diagonal } : {}),
    fromCentre: distance(focus.at, middle) / canvas.diagonal,
    dominants: plan.coveringOrder.flatMap((object, position) => {
      const visible = areas.layers[position]?.visible;
      if (!visible || plan.objects[object]?.role !== 'dominant') return [];
      const distanceShare = awayFromFocus(visible, focus.at, canvas.diagonal);
      return {
        object,
        holds: distanceShare <= ROUNDING || containsPoint(visible, focus.at),
        ...(Number.isFinite(distanceShare) ? { distanceShare } : {}),
      };
    }),
  };
}

interface Nearest {
  readonly system: Division['system'];
  readonly crossing: Crossing;
  readonly distance: number;
}

/** The crossing nearest to a point among all systems; the first of equals. Distance in canvas units. */
function nearestCrossing(divisions: readonly Division[], point: Point): Nearest | undefined {
  let nearest: Nearest | undefined;
  for (const { system, crossings } of divisions) {
    for (const crossing of crossings) {
      const away = distance(point, crossing.at);
      if (!nearest || away < nearest.distance) nearest = { system, crossing, distance: away };
    }
  }
  return nearest;
}
