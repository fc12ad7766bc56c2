import type { Point } from '../../plan/geometry/point.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import { millimetresPer } from '../../plan/lengths.js';
import { plainNumber } from '../../plan/problems.js';

/** The grid that carries a drawing over, canvas units. */
export interface TransferGrid {
  /** False for the one that is taken where the plan states none. */
  readonly isStated: boolean;
  /** Where its uprights stand, from the left, both edges of the canvas included: one more than there are columns. */
  readonly uprights: readonly number[];
  /** Where its levels lie, from the top, both edges included. */
  readonly levels: readonly number[];
  /** Of a whole square. */
  readonly square: { readonly width: number; readonly height: number };
  /** Width of the last column and height of the last row, where they are less than a whole square. */
  readonly lastColumn?: number;
  readonly lastRow?: number;
  /** What states it in a plan: `grid every 10 cm`. */
  readonly line: string;
  /** Left and right are changed over, for what is carried over from the back; squares keep their names. */
  readonly isMirrored?: true;
}

/** What of a grid is drawn: its lines, and from which side its columns are lettered. */
export type GridLines = Pick<TransferGrid, 'uprights' | 'levels' | 'isMirrored'>;

/** A place by its square: its name, and how far it is from the square's left and upper side, canvas units. */
export interface PlaceInSquare {
  readonly name: string;
  readonly fromLeft: number;
  readonly fromTop: number;
}

/** As many squares as the short side has at least where no grid is stated. */
const FEWEST_ON_THE_SHORT_SIDE = 4;
/** Sides of squares that are easily measured off: millimetres for rules in centimetres, inches for others. */
const METRIC_SIDES = [2000, 1000, 500, 200, 100, 50, 20, 10, 5, 2, 1, 0.5, 0.2];
const INCH_SIDES = [72, 36, 24, 12, 6, 4, 3, 2, 1, 0.5, 0.25, 0.125, 0.0625, 0.03125, 0.015625, 0.0078125];
/** No more columns or rows than a plan may state. */
const MOST_SQUARES = 200;
/** What is left of a side is a square of its own from this part of one on: less is rounding. */
const ROUNDING = 1e-6;

type Side = Pick<Canvas, 'width' | 'height' | 'unit' | 'millimetresPerUnit'>;

/**
 * The grid that a plan states, or one that fits its canvas: squares of a side that is easily measured off, the largest
 * of which the short side has four at least. A spacing begins at the upper left corner, so the last column and the last
 * row may be narrower than a square.
 */
export function transferGridOf({
  canvas,
  transferGrid,
}: Pick<Plan, 'canvas' | 'transferGrid'>): TransferGrid {
  const stated = transferGrid?.value;
  if (stated === undefined) return { ...spaced(canvas, usualSide(canvas)), isStated: false };
  if ('every' in stated) return spaced(canvas, stated.every);
  const { columns, rows } = stated;
  return {
    isStated: true,
    uprights: evenly(canvas.width, columns),
    levels: evenly(canvas.height, rows),
    square: { width: canvas.width / columns, height: canvas.height / rows },
    line: `grid ${columns} x ${rows}`,
  };
}

/** `A` to `Z`, then `AA`, `AB` ...; the first column is 0. */
export function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}

/** `C3`: the third column from the left, the third row from the top. */
export function squareName(column: number, row: number): string {
  return `${columnName(column)}${row + 1}`;
}

/** The names of the columns, from left to right. */
export function columnNames({
  uprights,
  isMirrored,
}: Pick<TransferGrid, 'uprights' | 'isMirrored'>): readonly string[] {
  const names = Array.from({ length: uprights.length - 1 }, (_, column) => columnName(column));
  return isMirrored ? names.reverse() : names;
}

/** The square that a place on the canvas lies in; on a line it belongs to the square to the right and below. */
export function placeInSquare(grid: TransferGrid, { x, y }: Point): PlaceInSquare {
  const { uprights, levels, isMirrored } = grid;
  const column = indexAt(uprights, x);
  const row = indexAt(levels, y);
  return {
    name: squareName(isMirrored ? uprights.length - 2 - column : column, row),
    fromLeft: x - (uprights[column] ?? 0),
    fromTop: y - (levels[row] ?? 0),
  };
}

function indexAt(lines: readonly number[], at: number): number {
  const edge = (lines.at(-1) ?? 0) * 1e-9;
  const next = lines.findIndex((line) => line > at + edge);
  return next < 0 ? Math.max(0, lines.length - 2) : Math.max(0, next - 1);
}

function evenly(length: number, count: number): readonly number[] {
  return Array.from({ length: count + 1 }, (_, index) => (length * index) / count);
}

function spaced(canvas: Side, side: number): TransferGrid {
  const across = everySide(canvas.width, side);
  const down = everySide(canvas.height, side);
  return {
    isStated: true,
    uprights: across.lines,
    levels: down.lines,
    square: { width: Math.min(side, canvas.width), height: Math.min(side, canvas.height) },
    ...(across.last === undefined ? {} : { lastColumn: across.last }),
    ...(down.last === undefined ? {} : { lastRow: down.last }),
    line: `grid every ${sideInWords(side, canvas)}`,
  };
}

function everySide(
  length: number,
  side: number,
): { readonly lines: readonly number[]; readonly last?: number } {
  const whole = Math.min(MOST_SQUARES, Math.floor(length / side + ROUNDING));
  const lines = Array.from({ length: whole + 1 }, (_, index) => index * side);
  const rest = length - whole * side;
  if (rest > side * ROUNDING) return { lines: [...lines, length], ...(whole === 0 ? {} : { last: rest }) };
  return { lines: [...lines.slice(0, -1), length] };
}

/** Canvas units. */
function usualSide({ width, height, unit, millimetresPerUnit }: Side): number {
  const short = Math.min(width, height);
  const long = Math.max(width, height);
  const sides = (
    unit === 'in' ? INCH_SIDES.map((inches) => inches * millimetresPer('in')) : METRIC_SIDES
  ).map((millimetres) => millimetres / millimetresPerUnit);
  const roomy = sides.filter((side) => long / side <= MOST_SQUARES);
  return roomy.find((side) => short / side >= FEWEST_ON_THE_SHORT_SIDE - ROUNDING) ?? roomy.at(-1) ?? short;
}

/** In the canvas's unit, but metres in centimetres, as squares of them are measured off. */
function sideInWords(side: number, { unit }: Side): string {
  return unit === 'm' ? `${plainNumber(side * 100, 4)} cm` : `${plainNumber(side, 4)} ${unit}`;
}
