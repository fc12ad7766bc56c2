import type { Side } from '../../../grammar/index.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import type { BorderMeasure, BorderStretch } from '../borders/borders.js';
import type { Corner } from './eye-path.js';
import { higherFirst, inSteps } from '../areas/place-order.js';
import { OPPOSITE } from '../tangency/canvas-edge.js';
import { cornerNear, CORNER_REACH, edgeNear } from './leads-edge.js';
import { isWithin, pullAtFocus, pullOfStrongest, ROUNDING, stretchesPulling } from './pulls.js';

type CanvasSize = Pick<Canvas, 'width' | 'height' | 'diagonal'>;

/** A border that carries the eye out of the picture. */
export interface Exit {
  /** Where it meets the edge of the canvas. */
  readonly at: Point;
  readonly side: Side;
  readonly corner?: Corner;
  /** The areas on either side of the border; `GROUND` for the bare ground. */
  readonly areas: readonly [number, number];
  /** Pull of the border, as in `BorderStretch`; the mean along its straight run. */
  readonly pull: number;
  /** How long it runs straight to the edge, canvas units. */
  readonly length: number;
  /** The way it goes out: degrees, 0 to the right, 90 down. */
  readonly heading: number;
}

/** Parts of the diagonal. */
const SHORTEST = 0.15;
const NEAR_EXIT = 0.08;
const AT_EDGE = 0.006;
const GAP = 0.012;
const FIRST_STRETCH = 0.03;
/** Degrees. */
const STRAIGHT = 15;
const ACROSS = 30;
/** An angle may pass another by so many degrees and be the same: shapes are cut on a grid. */
const SAME_ANGLE = 1e-4;
/** A border with this part of its pull stops it. */
const STOPS = 0.5;
/** Most places at the edge that are followed inwards, strongest first. */
const MOST_FOLLOWED = 24;

interface Run extends Exit {
  /** Unit vector out of the picture. */
  readonly outward: Point;
}

/**
 * Borders that carry the eye out of the picture, strongest first. A border counts when
 *
 * - it runs to within 0.6 % of the diagonal of the edge, at more than 15 degrees to that edge;
 * - it runs straight, within 15 degrees, for at least 15 % of the diagonal up to there;
 * - it pulls more than any border within 8 % of the diagonal of the focal point, and at most a tenth of the length of
 *   all borders pulls more than it;
 * - it leads away from the focal point;
 * - no other border of at least half its pull stands across it, by 30 degrees or more, within 8 % of the diagonal of
 *   the exit;
 * - it is not answered by another at the opposite edge on one line with it: a horizon or the edge of a table goes out
 *   at both sides and divides the picture rather than leading out of it.
 *
 * Heuristic. Without a focal point, or without a border near it, nothing is said.
 */
export function measureExits(
  canvas: CanvasSize,
  focus: Point | undefined,
  { stretches, byFront }: Pick<BorderMeasure, 'stretches' | 'byFront'>,
): readonly Exit[] {
  if (!focus) return [];
  const atFocus = pullAtFocus(canvas, focus, byFront);
  if (atFocus === 0) return [];
  const least = Math.max(atFocus, pullOfStrongest(byFront));
  const strong = stretchesPulling(byFront, least).filter(({ pull }) => pull > atFocus);
  const runs = placesAtEdge(canvas, strong).flatMap((place) => runTo(place, canvas, strong) ?? []);
  return runs
    .filter(
      ({ at, outward }) =>
        (at.x - focus.x) * outward.x + (at.y - focus.y) * outward.y > ROUNDING * canvas.diagonal,
    )
    .filter((run) => !runs.some((other) => answers(run, other)))
    .filter((run) => !isStopped(run, canvas, stretches))
    .map(({ outward: _, ...exit }) => exit);
}

/** Where strong borders meet the edge of the canvas, one place for each border there, strongest first. */
function placesAtEdge(canvas: CanvasSize, strong: readonly BorderStretch[]): readonly BorderStretch[] {
  const reach = AT_EDGE * canvas.diagonal;
  const higher = higherFirst(canvas);
  const atEdge = strong
    .filter(({ at }) => edgeNear(at, canvas, reach) !== undefined)
    .map((place) => ({
      place,
      pull: inSteps(place.pull, 1),
      toEdge: inSteps(toEdge(place.at, canvas), canvas.diagonal),
    }))
    .sort(
      (one, other) =>
        other.pull - one.pull || one.toEdge - other.toEdge || higher(one.place.at, other.place.at),
    );
  const places: BorderStretch[] = [];
  for (const { place } of atEdge) {
    if (places.length === MOST_FOLLOWED) break;
    if (places.every(({ at }) => distance(at, place.at) > 2 * reach * (1 + ROUNDING))) places.push(place);
  }
  return places;
}

function toEdge({ x, y }: Point, { width, height }: CanvasSize): number {
  return Math.min(x, y, width - x, height - y);
}

/**
 * The straight run of strong borders that ends at a place at the edge; none when it is short or runs along the edge.
 */
function runTo(place: BorderStretch, canvas: CanvasSize, strong: readonly BorderStretch[]): Run | undefined {
  const side = edgeNear(place.at, canvas, AT_EDGE * canvas.diagonal);
  if (!side) return undefined;
  const first = outwardOf(place.direction, side);
  const outward = settled(place, first, canvas, strong);
  const alongEdge = side === 'left' || side === 'right' ? Math.abs(outward.y) : Math.abs(outward.x);
  if (degreesOf(alongEdge) < STRAIGHT - SAME_ANGLE) return undefined;
  const inwards = followed(place, outward, canvas, strong);
  const length = inwards.reduce((most, { back }) => Math.max(most, back), 0);
  if (length < SHORTEST * canvas.diagonal * (1 - ROUNDING)) return undefined;
  const weight = inwards.reduce((sum, { stretch }) => sum + stretch.length, 0);
  const pull = inwards.reduce((sum, { stretch }) => sum + stretch.length * stretch.pull, 0) / weight;
  const at = ontoEdge(place.at, outward, side, canvas);
  const corner = cornerNear(at, canvas, CORNER_REACH * canvas.diagonal);
  return {
    at,
    side,
    ...(corner ? { corner } : {}),
    areas: [place.front, place.behind],
    pull,
    length: length + distance(at, place.at),
    heading: (Math.atan2(outward.y, outward.x) * 180) / Math.PI,
    outward,
  };
}

function outwardOf(direction: number, side: Side): Point {
  const along = { x: Math.cos(direction), y: Math.sin(direction) };
  const outwards =
    side === 'left' ? -along.x : side === 'right' ? along.x : side === 'top' ? -along.y : along.y;
  return outwards < 0 ? { x: -along.x, y: -along.y } : along;
}

/** The direction of the last stretch as a whole: one short piece of a curve or a staircase tells little. */
function settled(
  place: BorderStretch,
  first: Point,
  canvas: CanvasSize,
  strong: readonly BorderStretch[],
): Point {
  let sum = { x: 0, y: 0 };
  for (const { at, length, direction } of strong) {
    if (!isWithin(at, place.at, FIRST_STRETCH * canvas.diagonal * (1 + ROUNDING))) continue;
    const along = { x: Math.cos(direction), y: Math.sin(direction) };
    const same = along.x * first.x + along.y * first.y;
    if (degreesOf(Math.abs(same)) > 2 * STRAIGHT + SAME_ANGLE) continue;
    sum = { x: sum.x + Math.sign(same) * along.x * length, y: sum.y + Math.sign(same) * along.y * length };
  }
  const size = Math.hypot(sum.x, sum.y);
  return size > 0 ? { x: sum.x / size, y: sum.y / size } : first;
}

/** The strong stretches on the way inwards without a gap, each with how far back from the place its middle lies. */
function followed(
  place: BorderStretch,
  outward: Point,
  canvas: CanvasSize,
  strong: readonly BorderStretch[],
): readonly { readonly stretch: BorderStretch; readonly back: number }[] {
  const gap = GAP * canvas.diagonal * (1 + ROUNDING);
  const slope = Math.tan((STRAIGHT * Math.PI) / 180);
  const inLine = strong
    .map((stretch) => {
      const x = place.at.x - stretch.at.x;
      const y = place.at.y - stretch.at.y;
      return {
        stretch,
        back: x * outward.x + y * outward.y,
        beside: Math.abs(x * outward.y - y * outward.x),
      };
    })
    .filter(({ stretch, back, beside }) => {
      const same = Math.abs(
        Math.cos(stretch.direction) * outward.x + Math.sin(stretch.direction) * outward.y,
      );
      return (
        back >= -gap && beside <= Math.max(back, 0) * slope + gap && degreesOf(same) <= STRAIGHT + SAME_ANGLE
      );
    })
    .sort((one, other) => one.back - other.back);
  const run: { readonly stretch: BorderStretch; readonly back: number }[] = [];
  let reached = 0;
  for (const { stretch, back } of inLine) {
    if (back - stretch.length / 2 > reached + gap) break;
    reached = Math.max(reached, back + stretch.length / 2);
    run.push({ stretch, back: back + stretch.length / 2 });
  }
  return run;
}

function ontoEdge(place: Point, outward: Point, side: Side, { width, height }: CanvasSize): Point {
  const gap =
    side === 'left'
      ? -place.x / outward.x
      : side === 'right'
        ? (width - place.x) / outward.x
        : side === 'top'
          ? -place.y / outward.y
          : (height - place.y) / outward.y;
  return { x: place.x + gap * outward.x, y: place.y + gap * outward.y };
}

/** Whether two runs out at opposite edges lie on one line. */
function answers(run: Run, other: Run): boolean {
  if (other.side !== OPPOSITE[run.side]) return false;
  const size = distance(run.at, other.at);
  const across = { x: (run.at.x - other.at.x) / size, y: (run.at.y - other.at.y) / size };
  const turn = (outward: Point, sign: 1 | -1): number =>
    degreesOf(sign * (outward.x * across.x + outward.y * across.y));
  const most = STRAIGHT + SAME_ANGLE;
  return turn(run.outward, 1) <= most && turn(other.outward, -1) <= most;
}

function isStopped(run: Run, { diagonal }: CanvasSize, stretches: readonly BorderStretch[]): boolean {
  const reach = NEAR_EXIT * diagonal * (1 + ROUNDING);
  return stretches.some(({ at, pull, direction }) => {
    if (pull < STOPS * run.pull || !isWithin(at, run.at, reach)) return false;
    const same = Math.abs(Math.cos(direction) * run.outward.x + Math.sin(direction) * run.outward.y);
    return degreesOf(same) >= ACROSS - SAME_ANGLE;
  });
}

/** Of a cosine; degrees. */
function degreesOf(cosine: number): number {
  return (Math.acos(Math.min(1, Math.max(-1, cosine))) * 180) / Math.PI;
}
