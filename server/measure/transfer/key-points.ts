import { containsPoint, distanceToOutline } from '../../plan/geometry/regions.js';
import { type Box, type Point, distance } from '../../plan/geometry/point.js';
import type { Canvas, Plan, PlanObject } from '../../plan/plan.js';
import { systemPlaces, type DivisionPlaces } from './division-places.js';
import { type TransferGrid, transferGridOf } from './grid.js';
import { type ShapePiece, piecesOf } from './pieces.js';
import type { PlaceKind } from './shape-points.js';

/** All that is measured off to carry a drawing over to its canvas. Canvas units. */
export interface Transfer {
  readonly grid: TransferGrid;
  /** Those that have a point on the canvas, in the order of `plan.objects`. */
  readonly objects: readonly ObjectPoints[];
  readonly places: readonly NamedPlace[];
  readonly divisions: readonly DivisionPlaces[];
}

export interface ObjectPoints {
  /** Index into `plan.objects`. */
  readonly object: number;
  /** The largest first. */
  readonly pieces: readonly PiecePoints[];
  /** Smaller shapes of it whose points are not given. */
  readonly more: number;
}

/** A shape of an object: what it is, and its places on the canvas. */
export interface PiecePoints {
  readonly form: ShapePiece['form'];
  /** Of a circle. */
  readonly radius?: number;
  /** Of an ellipse: its whole axes, and how far the long one is turned, degrees clockwise. */
  readonly axes?: readonly [number, number];
  readonly turn?: number;
  readonly points: readonly KeyPoint[];
  /** Places of it that lie off the canvas. */
  readonly offCanvas: number;
}

export interface KeyPoint {
  /** Its number among those of the object, from 1, as in the drawing. */
  readonly number: number;
  readonly at: Point;
  readonly kind: PlaceKind | 'crosses the edge';
  /** The edge of the canvas at which the border leaves it. */
  readonly edge?: 'left' | 'right' | 'top' | 'bottom';
  /** Something in front lies over it. */
  readonly isCovered: boolean;
}

/** A place that the plan names beside its objects. */
export interface NamedPlace {
  readonly name: string;
  readonly at: Point;
  readonly of: 'horizon' | 'focus' | 'lead';
}

/** Points of one object; a shape is given whole or not at all. */
const MOST_OF_AN_OBJECT = 24;
/** Where one border crosses the edges of the canvas. */
const MOST_CROSSINGS = 12;
/** Nearer than this, part of the diagonal, two places are one. */
const SAME = 1e-6;

const known = new WeakMap<Plan, Transfer>();

/** What is measured off of a plan to carry it over: a pure function of it, kept as long as the plan is. */
export function transferOf(plan: Plan): Transfer {
  const before = known.get(plan);
  if (before !== undefined) return before;
  const transfer = measured(plan);
  known.set(plan, transfer);
  return transfer;
}

function measured(plan: Plan): Transfer {
  return {
    grid: transferGridOf(plan),
    objects: plan.objects.flatMap((object) => {
      const points = pointsOf(object, plan);
      return points.pieces.length === 0 ? [] : [points];
    }),
    places: placesOf(plan),
    divisions: systemPlaces(plan),
  };
}

function pointsOf({ index, outline }: PlanObject, plan: Plan): ObjectPoints {
  const { canvas } = plan;
  const inFront = plan.coveringOrder
    .slice(plan.coveringOrder.indexOf(index) + 1)
    .flatMap((other) => plan.objects[other] ?? []);
  const pieces: PiecePoints[] = [];
  let given = 0;
  let more = 0;
  for (const piece of piecesOf(outline)) {
    const { points, offCanvas } = onCanvas(piece, canvas);
    if (points.length === 0) continue;
    if (pieces.length > 0 && given + points.length > MOST_OF_AN_OBJECT) {
      more++;
      continue;
    }
    pieces.push({
      form: piece.form,
      ...(piece.form === 'circle' ? { radius: piece.radius } : {}),
      ...(piece.form === 'ellipse' ? { axes: piece.axes, turn: piece.turn } : {}),
      offCanvas,
      points: points.map((point, place) => ({
        ...point,
        number: given + place + 1,
        isCovered: inFront.some((object) => covers(object, point.at, canvas)),
      })),
    });
    given += points.length;
  }
  return { object: index, pieces, more };
}

type Placed = Omit<KeyPoint, 'number' | 'isCovered'>;

/** The places of a shape on the canvas, and in their order round it where its border crosses the edges. */
function onCanvas(
  piece: ShapePiece,
  canvas: Canvas,
): { readonly points: readonly Placed[]; readonly offCanvas: number } {
  const same = SAME * canvas.diagonal;
  const within = piece.points.filter(({ at }) => isWithin(at, canvas, same));
  const crossings = crossingsOf(piece.border, canvas).slice(0, MOST_CROSSINGS);
  const fresh = crossings.filter(({ at }) => !within.some((point) => distance(point.at, at) <= same));
  return { points: [...within, ...fresh], offCanvas: piece.points.length - within.length };
}

function isWithin({ x, y }: Point, { width, height }: Canvas, same: number): boolean {
  return x >= -same && x <= width + same && y >= -same && y <= height + same;
}

function crossingsOf(border: readonly Point[], canvas: Canvas): readonly Placed[] {
  const found: Placed[] = [];
  border.forEach((from, index) => {
    const to = border[(index + 1) % border.length];
    if (to !== undefined) found.push(...crossingsOfSide(from, to, canvas));
  });
  return found;
}

/**
 * Where a straight side comes onto the canvas and leaves it, by the clipping of Y.-D. Liang and B. A. Barsky (1984).
 */
function crossingsOfSide(from: Point, to: Point, { width, height, diagonal }: Canvas): readonly Placed[] {
  const run = { x: to.x - from.x, y: to.y - from.y };
  const edges = [
    { edge: 'left', slope: -run.x, room: from.x },
    { edge: 'right', slope: run.x, room: width - from.x },
    { edge: 'top', slope: -run.y, room: from.y },
    { edge: 'bottom', slope: run.y, room: height - from.y },
  ] as const;
  let comes: { readonly part: number; readonly edge?: KeyPoint['edge'] } = { part: 0 };
  let leaves: { readonly part: number; readonly edge?: KeyPoint['edge'] } = { part: 1 };
  for (const { edge, slope, room } of edges) {
    // A side along an edge, or beyond it, does not cross it.
    if (slope === 0 && room <= 0) return [];
    if (slope < 0 && room / slope > comes.part) comes = { part: room / slope, edge };
    if (slope > 0 && room / slope < leaves.part) leaves = { part: room / slope, edge };
  }
  if ((leaves.part - comes.part) * Math.hypot(run.x, run.y) <= SAME * diagonal) return [];
  return [comes, leaves].flatMap(({ part, edge }): readonly Placed[] =>
    edge === undefined
      ? []
      : [{ at: { x: from.x + part * run.x, y: from.y + part * run.y }, kind: 'crosses the edge', edge }],
  );
}

function covers({ outline }: PlanObject, at: Point, { diagonal }: Canvas): boolean {
  return (
    inBox(outline.box, at) &&
    containsPoint(outline.rings, at, outline.fillRule) &&
    distanceToOutline(outline.rings, at) > 1e-3 * diagonal
  );
}

function inBox({ left, top, right, bottom }: Box, { x, y }: Point): boolean {
  return x > left && x < right && y > top && y < bottom;
}

function placesOf({ canvas, focus, horizon, leads }: Plan): readonly NamedPlace[] {
  const at = horizon?.value;
  return [
    ...(at === undefined || at < 0 || at > canvas.height
      ? []
      : [
          { name: 'horizon, left end', at: { x: 0, y: at }, of: 'horizon' as const },
          { name: 'horizon, right end', at: { x: canvas.width, y: at }, of: 'horizon' as const },
        ]),
    ...(focus === undefined ? [] : [{ name: 'focal point', at: focus.at, of: 'focus' as const }]),
    ...leads.flatMap(({ name, points, from, through, to }) => {
      const first = from?.at ?? points[0];
      const places = [
        ...(first === undefined ? [] : [{ name: `${name}, its beginning`, at: first }]),
        ...through.map((place, index) => ({
          name: through.length === 1 ? `${name}, on its way` : `${name}, on its way, ${index + 1}`,
          at: place.at,
        })),
        { name: `${name}, its end`, at: to.at },
      ];
      return places.map((place) => ({ ...place, of: 'lead' as const }));
    }),
  ].filter(({ at: place }) => isWithin(place, canvas, SAME * canvas.diagonal));
}
