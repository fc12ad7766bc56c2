import type { DividedCanvas, CanvasSides } from './division.js';
import { quadrantName } from './division-names.js';
import type { Point } from './geometry/point.js';
import type { Crossing, DivisionLine } from './plan.js';

/** A canvas is taken for a root rectangle within so much of its proportion, as its stretcher can't be told from one. */
const ROOT_TOLERANCE = 0.01;

/**
 * Both diagonals of the canvas, and from each corner the perpendicular to the diagonal that does not pass through it,
 * carried on to the opposite long side, where it cuts off the reciprocal: a rectangle of the canvas's own proportion.
 * Crossings: the feet of the four perpendiculars, named by the quarter they lie in, and the centre. On a square the
 * perpendiculars are the diagonals.
 *
 * J. Hambidge, The Elements of Dynamic Symmetry: the foot lies w h^2 / (w^2 + h^2), h w^2 / (w^2 + h^2) from its
 * corner, and the perpendicular meets the long side at h^2 / w (on an upright canvas w^2 / h).
 */
export function diagonals(sides: CanvasSides): DividedCanvas {
  const { width, height } = sides;
  const centre: Crossing = { name: 'centre', at: { x: width / 2, y: height / 2 } };
  if (width === height) return { lines: diagonalsOf(sides), crossings: [centre] };
  const reciprocals = cornersOf(sides).map((corner) => reciprocalFrom(corner, width, height));
  return {
    lines: [...diagonalsOf(sides), ...reciprocals.map(({ line }) => line)],
    crossings: [...eyes(reciprocals, sides), centre],
  };
}

/**
 * The fourteen lines: two diagonals, eight from the corners to the middles of the opposite sides, and four from each
 * middle of a side to the next. Crossings, in parts of the sides: the centre; `upper left` and its like at 1/3 and
 * 2/3, where three lines meet; `upper centre`, `middle left` and their like, where two lines from corners meet at 1/4
 * or 3/4 of the canvas's own middle lines; and at 1/4 and 3/4 the eyes where the diagonals pass through the diamond,
 * which are counted (`crossing 1 1`, `crossing 5 1`, `crossing 1 5`, `crossing 5 5`), as their quarters have a name.
 * Common practice, no source.
 */
export function armature(sides: CanvasSides): DividedCanvas {
  const { width, height } = sides;
  const at = (x: number, y: number): Point => ({ x: x * width, y: y * height });
  const line = (from: readonly [number, number], to: readonly [number, number]): DivisionLine => ({
    from: at(...from),
    to: at(...to),
  });
  const fromCorners = [0, 1].flatMap((x) =>
    [0, 1].flatMap((y) => [line([x, y], [1 - x, 1 / 2]), line([x, y], [1 / 2, 1 - y])]),
  );
  const diamond = [0, 1].flatMap((x) => [line([x, 1 / 2], [1 / 2, 0]), line([x, 1 / 2], [1 / 2, 1])]);
  const named = [
    at(1 / 2, 1 / 2),
    ...[1 / 3, 2 / 3].flatMap((y) => [1 / 3, 2 / 3].map((x) => at(x, y))),
    at(1 / 2, 1 / 4),
    at(1 / 4, 1 / 2),
    at(3 / 4, 1 / 2),
    at(1 / 2, 3 / 4),
  ];
  const counted = [1, 5].flatMap((row) =>
    [1, 5].map((column) => ({
      name: `crossing ${column} ${row}`,
      at: at(column === 1 ? 1 / 4 : 3 / 4, row === 1 ? 1 / 4 : 3 / 4),
    })),
  );
  return {
    lines: [...diagonalsOf(sides), ...fromCorners, ...diamond],
    crossings: [...named.map((point) => ({ name: quadrantName(point, sides), at: point })), ...counted],
  };
}

/**
 * A canvas that is a root-n rectangle itself, within 1 %: cut along its long side into n parts, each of its own
 * proportion, with its diagonals and reciprocals (J. Hambidge, The Elements of Dynamic Symmetry). Any other canvas: the
 * largest root-n rectangle it holds, laid in from both ends, or where the canvas is too short for that from both long
 * sides, as a rabatment lays the square; each with its inner edge, its diagonals, and the reciprocals that start at the
 * canvas's corners. To cut the long side of any canvas in n would give parts without that root in them. Not cut into
 * its parts there: two such fences across each other show no division at all.
 *
 * Crossings: the eyes, where the reciprocals meet the diagonals; and the centre on a root rectangle.
 */
export function rootRectangle(sides: CanvasSides, n: number): DividedCanvas {
  const { width, height } = sides;
  const root = Math.sqrt(n);
  const long = Math.max(width, height);
  const short = Math.min(width, height);
  if (Math.abs(long / short / root - 1) <= ROOT_TOLERANCE) {
    const { lines, crossings } = diagonals(sides);
    return { lines: [...lines, ...cuts(sides, n)], crossings };
  }
  const fitsAlong = long / short > root;
  const [along, across] = fitsAlong ? [short * root, short] : [long, long / root];
  const [wide, high] = width >= height ? [along, across] : [across, along];
  const laid = cornersOf(sides).map((corner) => reciprocalFrom(corner, wide, high));
  return {
    lines: [
      ...innerEdges(sides, wide, high),
      ...laid.map(({ diagonal }) => diagonal),
      ...laid.map(({ line }) => line),
    ],
    crossings: eyes(laid, sides),
  };
}

/** A corner of the canvas, and which way the canvas lies from there: 1 to the right or down, -1 to the left or up. */
interface Corner extends Point {
  readonly right: 1 | -1;
  readonly down: 1 | -1;
}

function cornersOf({ width, height }: CanvasSides): readonly Corner[] {
  return [
    { x: 0, y: 0, right: 1, down: 1 },
    { x: width, y: 0, right: -1, down: 1 },
    { x: 0, y: height, right: 1, down: -1 },
    { x: width, y: height, right: -1, down: -1 },
  ];
}

interface Reciprocal {
  /** From the corner to the opposite long side. */
  readonly line: DivisionLine;
  /** The diagonal it stands on. */
  readonly diagonal: DivisionLine;
  readonly foot: Point;
}

/** In a rectangle that stands in a corner of the canvas, the perpendicular from that corner to its diagonal. */
function reciprocalFrom({ x, y, right, down }: Corner, width: number, height: number): Reciprocal {
  const at = (across: number, along: number): Point => ({ x: x + right * across, y: y + down * along });
  const squares = width ** 2 + height ** 2;
  return {
    line: {
      from: { x, y },
      to: width > height ? at(height ** 2 / width, height) : at(width, width ** 2 / height),
    },
    diagonal: { from: at(width, 0), to: at(0, height) },
    foot: at((width * height ** 2) / squares, (height * width ** 2) / squares),
  };
}

/** The feet as crossings, each named by the quarter of the canvas it lies in; those that fall together are one. */
function eyes(reciprocals: readonly Reciprocal[], sides: CanvasSides): readonly Crossing[] {
  const named = reciprocals.map(({ foot }) => ({ name: quadrantName(foot, sides), at: foot }));
  return named.filter(({ name }, index) => named.findIndex((other) => other.name === name) === index);
}

function diagonalsOf({ width, height }: CanvasSides): readonly DivisionLine[] {
  return [
    { from: { x: 0, y: 0 }, to: { x: width, y: height } },
    { from: { x: 0, y: height }, to: { x: width, y: 0 } },
  ];
}

/** The n - 1 lines that cut the long side of the canvas into n equal parts. */
function cuts({ width, height }: CanvasSides, n: number): readonly DivisionLine[] {
  return Array.from({ length: n - 1 }, (_, index) => {
    const part = (index + 1) / n;
    return width > height
      ? { from: { x: part * width, y: 0 }, to: { x: part * width, y: height } }
      : { from: { x: 0, y: part * height }, to: { x: width, y: part * height } };
  });
}

/** The two edges of laid-in rectangles that do not lie on the edge of the canvas; one where they fall together. */
function innerEdges({ width, height }: CanvasSides, wide: number, high: number): readonly DivisionLine[] {
  return wide < width
    ? [...new Set([width - wide, wide])].map((x) => ({ from: { x, y: 0 }, to: { x, y: height } }))
    : [...new Set([height - high, high])].map((y) => ({ from: { x: 0, y }, to: { x: width, y } }));
}
