import { type Polygons, areaOnGrid, boxOfPolygons } from './clipping.js';
import { type Box, boxCentre, boxContains } from './point.js';

/** Polygons on the grid of whole numbers with what is asked of them again and again. */
export interface Piece {
  readonly polygons: Polygons;
  /** Grid steps. */
  readonly box: Box;
  /** Squares of the grid. */
  readonly area: number;
  /** True when the piece is exactly its box. */
  readonly isBox: boolean;
}

export const NOTHING: Piece = pieceOf([]);

export function pieceOf(polygons: Polygons): Piece {
  const box = boxOfPolygons(polygons);
  const area = areaOnGrid(polygons);
  return { polygons, box, area, isBox: area > 0 && area === boxArea(box) };
}

/** The outer ring of a rectangle, running the way clipper2 counts positive. */
export function rectanglePath({ left, top, right, bottom }: Box): Polygons[number] {
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

/** Corners of all its rings: what a cut has to look at. */
export function cornersOf({ polygons }: Piece): number {
  return polygons.reduce((sum, ring) => sum + ring.length, 0);
}

/** True when a look at boxes and corners shows that `cover` holds all of `other`; false when that is not so plain. */
export function plainlyCovers(cover: Piece, other: Piece): boolean {
  if (cover.area < other.area || !boxContains(cover.box, other.box)) return false;
  return cover.isBox || boxContains(innerBoxOf(cover), other.box) || samePolygons(cover, other);
}

export function samePieces(a: readonly Piece[], b: readonly Piece[]): boolean {
  return a.length === b.length && a.every((piece, index) => piece === b[index]);
}

/** An area, squares of the grid, that two pieces share at most. */
export function mostShared(a: Piece, b: Piece): number {
  return Math.min(a.area, b.area, boxArea(commonBox(a.box, b.box)));
}

/** The part that two boxes share; without area when they do not. */
export function commonBox(a: Box, b: Box): Box {
  const left = Math.max(a.left, b.left);
  const top = Math.max(a.top, b.top);
  return {
    left,
    top,
    right: Math.max(left, Math.min(a.right, b.right)),
    bottom: Math.max(top, Math.min(a.bottom, b.bottom)),
  };
}

export function boxArea({ left, top, right, bottom }: Box): number {
  return (right - left) * (bottom - top);
}

function samePolygons(a: Piece, b: Piece): boolean {
  if (a.area !== b.area || a.polygons.length !== b.polygons.length) return false;
  return a.polygons.every((ring, index) => {
    const other = b.polygons[index];
    return (
      ring.length === other?.length &&
      ring.every(({ x, y }, corner) => x === other[corner]?.x && y === other[corner]?.y)
    );
  });
}

const innerBoxes = new WeakMap<Piece, Box>();

/**
 * The largest box of the piece's own proportions round its middle that lies in it; no more than the middle if none
 * does.
 */
function innerBoxOf(piece: Piece): Box {
  const known = innerBoxes.get(piece);
  if (known) return known;
  const { box, polygons } = piece;
  const middle = boxCentre(box);
  const halfWidth = (box.right - box.left) / 2;
  const halfHeight = (box.bottom - box.top) / 2;
  let part = 1;
  let winding = 0;
  for (const ring of polygons) {
    let last = ring.at(-1);
    for (const next of ring) {
      if (last) {
        const ax = (last.x - middle.x) / halfWidth;
        const ay = (last.y - middle.y) / halfHeight;
        const bx = (next.x - middle.x) / halfWidth;
        const by = (next.y - middle.y) / halfHeight;
        part = Math.min(part, nearestSquare(ax, ay, bx, by));
        if (ay <= 0 !== by <= 0) winding += Math.sign(ax * by - bx * ay);
      }
      last = next;
    }
  }
  // A little less, for what rounding may have added.
  const kept = winding === 0 ? 0 : Math.max(0, part - 1e-9);
  const inner = {
    left: middle.x - kept * halfWidth,
    top: middle.y - kept * halfHeight,
    right: middle.x + kept * halfWidth,
    bottom: middle.y + kept * halfHeight,
  };
  innerBoxes.set(piece, inner);
  return inner;
}

/** Half the side of the smallest square round the origin that reaches the stretch from `a` to `b`. */
function nearestSquare(ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const reach = (part: number) => {
    const along = part > 0 && part < 1 ? part : 0;
    return Math.max(Math.abs(ax + along * dx), Math.abs(ay + along * dy));
  };
  // The larger of two distances is least where one is 0, where both are alike, or at an end.
  return Math.min(
    reach(0),
    Math.max(Math.abs(bx), Math.abs(by)),
    reach(-ax / dx),
    reach(-ay / dy),
    reach((ay - ax) / (dx - dy)),
    reach(-(ax + ay) / (dx + dy)),
  );
}
