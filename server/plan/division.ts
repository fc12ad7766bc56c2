import type { DivisionSystem } from '../../grammar/index.js';
import { crossingName, quadrantName } from './division-names.js';
import { armature, diagonals, rootRectangle } from './division-slopes.js';
import type { Point } from './geometry/point.js';
import type { Crossing, DivisionLine } from './plan.js';

/** Euclid, Elements VI, definition 3: a line cut in extreme and mean ratio. */
export const PHI = (1 + Math.sqrt(5)) / 2;

export interface CanvasSides {
  readonly width: number;
  readonly height: number;
}

/** Division lines of the painter's own, canvas units from the left and from the top. */
export interface OwnLines {
  readonly uprights: readonly number[];
  readonly levels: readonly number[];
}

export interface DividedCanvas {
  readonly lines: readonly DivisionLine[];
  readonly crossings: readonly Crossing[];
}

/**
 * The lines and named crossings of one division system on a canvas, in canvas units.
 * A system that gives none on this canvas (rabatment of a square) returns empty lists.
 *
 * Golden section: 1/phi from each edge (Euclid VI def. 3). Thirds, two to three (2/5, 3/5), quarters and
 * rabatment (the short side laid along the long one from each end; its crossings are those of its lines with
 * the two diagonals): common practice, no source. The systems of sloping lines are described in
 * division-slopes.ts.
 */
export function divide(sides: CanvasSides, system: DivisionSystem, own?: OwnLines): DividedCanvas {
  switch (system) {
    case 'golden':
      return fractions(sides, [1 - 1 / PHI, 1 / PHI]);
    case 'thirds':
      return fractions(sides, [1 / 3, 2 / 3]);
    case 'two to three':
      return fractions(sides, [2 / 5, 3 / 5]);
    case 'quarters':
      return fractions(sides, [1 / 4, 1 / 2, 3 / 4]);
    case 'rabatment':
      return rabatment(sides);
    case 'own':
      return grid(sides, own?.uprights ?? [], own?.levels ?? []);
    case 'diagonals':
      return diagonals(sides);
    case 'armature':
      return armature(sides);
    case 'root 2':
      return rootRectangle(sides, 2);
    case 'root 3':
      return rootRectangle(sides, 3);
    case 'root 4':
      return rootRectangle(sides, 4);
    case 'root 5':
      return rootRectangle(sides, 5);
  }
}

/**
 * A crossing by its numbers, both counted from 1: in the `column`th place from the left and the `row`th from the top
 * among all places where the system's crossings stand, which are its uprights and levels when it has these.
 */
export function crossingByNumber(
  crossings: readonly Crossing[],
  column: number,
  row: number,
): Crossing | undefined {
  const xs = distinct(crossings.map(({ at }) => at.x));
  const ys = distinct(crossings.map(({ at }) => at.y));
  const x = xs[column - 1];
  const y = ys[row - 1];
  return crossings.find(({ at }) => at.x === x && at.y === y);
}

function fractions({ width, height }: CanvasSides, parts: readonly number[]): DividedCanvas {
  return grid(
    { width, height },
    parts.map((part) => part * width),
    parts.map((part) => part * height),
  );
}

function grid(sides: CanvasSides, uprights: readonly number[], levels: readonly number[]): DividedCanvas {
  const xs = distinct(uprights);
  const ys = distinct(levels);
  const columns = placeNames(xs, sides.width, ['left', 'centre', 'right']);
  const rows = placeNames(ys, sides.height, ['upper', 'middle', 'lower']);
  const crossings = xs.flatMap((x, column) =>
    ys.map((y, row) => ({
      name: crossingName(rows?.[row], columns?.[column]) ?? `crossing ${column + 1} ${row + 1}`,
      at: { x, y },
    })),
  );
  return {
    lines: [...xs.map((x) => upright(sides, x)), ...ys.map((y) => level(sides, y))],
    crossings,
  };
}

function rabatment(sides: CanvasSides): DividedCanvas {
  const { width, height } = sides;
  if (width === height) return { lines: [], crossings: [] };
  const long = Math.max(width, height);
  const short = Math.min(width, height);
  const at = distinct([long - short, short]);
  const lies = width > height;
  const points = at.flatMap((along): Point[] => {
    const across = (along * short) / long;
    const pair = distinct([across, short - across]);
    return pair.map((other) => (lies ? { x: along, y: other } : { x: other, y: along }));
  });
  return {
    lines: at.map((along) => (lies ? upright(sides, along) : level(sides, along))),
    crossings: points.map((point) => ({ name: quadrantName(point, sides), at: point })),
  };
}

/**
 * One name a line: by where it lies when that tells the lines apart, otherwise by their order; none for more
 * than three lines.
 */
function placeNames(
  at: readonly number[],
  side: number,
  names: readonly [string, string, string],
): readonly string[] | undefined {
  const [first, middle, last] = names;
  const byPlace = at.map((position) => {
    const part = position / side;
    return part < 0.45 ? first : part > 0.55 ? last : middle;
  });
  if (new Set(byPlace).size === at.length) return byPlace;
  if (at.length === 2) return [first, last];
  return at.length === 3 ? names : undefined;
}

function upright({ height }: CanvasSides, x: number): DivisionLine {
  return { from: { x, y: 0 }, to: { x, y: height } };
}

function level({ width }: CanvasSides, y: number): DivisionLine {
  return { from: { x: 0, y }, to: { x: width, y } };
}

function distinct(numbers: readonly number[]): readonly number[] {
  return [...new Set(numbers)].sort((a, b) => a - b);
}
