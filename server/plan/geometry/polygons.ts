import { type Polygons, united } from './clipping.js';
import { type Outline, type Ring, boxOfRings } from './path.js';
import { type Box, boxContains, boxHeight, boxWidth } from './point.js';

type Path = Polygons[number];

/**
 * Long side of the region on the grid of whole numbers. Each crossing of two borders is rounded to the grid, which
 * moves area by up to the length of a border times one step: at 2^26 some thousand crossings add up to 1e-8 of
 * the region, at 2^36 to less than 1e-11. clipper2-ts holds whole numbers up to 2^53, compares slopes exactly at any
 * size, and takes no longer for the larger grid.
 */
const GRID = 2 ** 36;

/** The grid of whole numbers laid over a region of the plane. */
export interface Grid {
  readonly region: Box;
  /** Steps of the grid to a canvas unit. */
  readonly scale: number;
}

/** The grid over `region`; none when the region has no width or height. */
export function gridOver(region: Box): Grid | undefined {
  const width = boxWidth(region);
  const height = boxHeight(region);
  const scale = GRID / Math.max(width, height);
  return width > 0 && height > 0 && Number.isFinite(scale) ? { region, scale } : undefined;
}

/** The part of an outline that lies in the grid's region, its self-crossings and overlaps resolved. */
export function polygonsOf(outline: Pick<Outline, 'rings' | 'fillRule'>, grid: Grid): Polygons {
  const paths = outline.rings.map((ring) => onGrid(clippedRing(ring, grid.region), grid));
  return united(paths, outline.fillRule);
}

const rings = new WeakMap<Path, { readonly grid: Grid; readonly ring: Ring }>();

/**
 * Back to canvas units, each ring the same one as long as its polygon; outer rings and holes run in opposite
 * directions.
 */
export function ringsOf(polygons: Polygons, grid: Grid): readonly Ring[] {
  return polygons.map((path) => {
    const known = rings.get(path);
    if (known?.grid === grid) return known.ring;
    const ring = ringOf(path, grid);
    rings.set(path, { grid, ring });
    return ring;
  });
}

function ringOf(path: Path, { region, scale }: Grid): Ring {
  const ring = new Float64Array(2 * path.length);
  path.forEach(({ x, y }, index) => {
    ring[2 * index] = region.left + x / scale;
    ring[2 * index + 1] = region.top + y / scale;
  });
  return ring;
}

/**
 * The part of a ring in a box. Every place inside the box is wound round as often as before (parts outside are
 * pressed flat onto the box's border), so any fill rule still holds. Sutherland and Hodgman 1974.
 */
export function clippedRing(ring: Ring, box: Box): Ring {
  if (boxContains(box, boxOfRings([ring]))) return ring;
  let points = cut(ring, 0, box.left, 1);
  points = cut(points, 0, box.right, -1);
  points = cut(points, 1, box.top, 1);
  return Float64Array.from(cut(points, 1, box.bottom, -1));
}

/** Keeps the side of the line `axis = at` where `side * (coordinate - at)` is positive. */
function cut(points: ArrayLike<number>, axis: 0 | 1, at: number, side: 1 | -1): readonly number[] {
  const kept: number[] = [];
  const count = points.length;
  for (let i = 0; i + 1 < count; i += 2) {
    const previous = (i + count - 2) % count;
    const here = points[i + axis] as number;
    const before = points[previous + axis] as number;
    const inside = side * (here - at) >= 0;
    if (inside !== side * (before - at) >= 0) {
      const part = (at - before) / (here - before);
      const other = 1 - axis;
      const from = points[previous + other] as number;
      const across = from + part * ((points[i + other] as number) - from);
      if (axis === 0) kept.push(at, across);
      else kept.push(across, at);
    }
    if (inside) kept.push(points[i] as number, points[i + 1] as number);
  }
  return kept;
}

function onGrid(ring: Ring, { region, scale }: Grid): Path {
  const path: Path = [];
  for (let i = 0; i + 1 < ring.length; i += 2) {
    path.push({
      x: Math.round(((ring[i] as number) - region.left) * scale),
      y: Math.round(((ring[i + 1] as number) - region.top) * scale),
    });
  }
  return path;
}
