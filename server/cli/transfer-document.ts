import { columnNames, placeInSquare, type TransferGrid } from '../measure/transfer/grid.js';
import { transferOf, type PiecePoints } from '../measure/transfer/key-points.js';
import { mirroredTransfer } from '../measure/transfer/mirrored.js';
import { ruled, rulerFor, worstRounding, type Ruler } from '../measure/transfer/rulers.js';
import type { Measures } from '../measure/measures.js';
import type { Point } from '../plan/geometry/point.js';
import type { Canvas, Plan } from '../plan/plan.js';
import { pointOf, round } from './figures.js';
import type { TransferDocument } from './schema/transfer.js';

export interface TransferDocumentOptions {
  readonly file: string;
  readonly errors: number;
  readonly isMirrored: boolean;
  /** What distances are read off; that of the canvas unless said. */
  readonly ruler?: Ruler | undefined;
}

/** What is measured off to carry a plan over, for programs; its schema is `schema/transfer-1.json`. */
export function transferDocument(
  plan: Plan,
  measures: Pick<Measures, 'sketch'>,
  { file, errors, isMirrored, ruler: wanted }: TransferDocumentOptions,
): TransferDocument {
  const { canvas } = plan;
  const ruler = wanted ?? rulerFor(canvas);
  const whole = transferOf(plan);
  const { grid, objects, places, divisions } = isMirrored ? mirroredTransfer(whole, canvas) : whole;
  const placed = (at: Point) => placePart(at, grid, canvas, ruler);
  const all = [
    ...objects.flatMap(({ pieces }) => pieces.flatMap(({ points }) => points.map(({ at }) => at))),
    ...places.map(({ at }) => at),
  ];
  return {
    schema: 'mahlstick/schema/transfer-1.json',
    version: 1,
    file,
    errors,
    ...(plan.title ? { title: plan.title.value } : {}),
    canvas: { width: round(canvas.width), height: round(canvas.height), unit: canvas.unit },
    mirrored: isMirrored,
    ruler,
    rounding: round(
      worstRounding(
        all.flatMap(({ x, y }) => [x * canvas.millimetresPerUnit, y * canvas.millimetresPerUnit]),
        ruler,
      ),
    ),
    grid: gridPart(grid),
    objects: objects.map(({ object, pieces, more }) => ({
      object: plan.objects[object]?.name ?? '',
      shapes: pieces.map((piece) => shapePart(piece, placed)),
      more,
    })),
    places: places.map(({ name, of, at }) => ({ name, of, ...placed(at) })),
    divisions: divisions.map(({ system, uprights, levels, slopes }) => ({
      system,
      uprights: uprights.map(round),
      levels: levels.map(round),
      slopes: slopes.map(({ from, to }) => ({ from: pointOf(from), to: pointOf(to) })),
    })),
    ...sketchPart(plan, measures),
  };
}

function gridPart(grid: TransferGrid): TransferDocument['grid'] {
  const spans = (lines: readonly number[], names: readonly string[]) =>
    names.map((name, index) => ({ name, from: round(lines[index] ?? 0), to: round(lines[index + 1] ?? 0) }));
  const { isStated, line, square, uprights, levels } = grid;
  return {
    stated: isStated,
    line,
    square: { width: round(square.width), height: round(square.height) },
    columns: spans(uprights, columnNames(grid)),
    rows: spans(
      levels,
      levels.slice(1).map((_, row) => String(row + 1)),
    ),
  };
}

type PlacePart = Omit<TransferDocument['places'][number], 'name' | 'of'>;

function placePart(
  at: Point,
  grid: TransferGrid,
  { millimetresPerUnit, width, height }: Canvas,
  ruler: Ruler,
): PlacePart {
  // What lies on an edge but for rounding lies on it.
  const on = { x: Math.min(width, Math.max(0, at.x)), y: Math.min(height, Math.max(0, at.y)) };
  const { name, fromLeft, fromTop } = placeInSquare(grid, on);
  return {
    fromLeft: round(on.x),
    fromTop: round(on.y),
    square: name,
    fromSquareLeft: round(fromLeft),
    fromSquareTop: round(fromTop),
    told: {
      fromLeft: ruled(on.x * millimetresPerUnit, ruler),
      fromTop: ruled(on.y * millimetresPerUnit, ruler),
    },
  };
}

function shapePart(
  { form, radius, axes, turn, offCanvas, points }: PiecePoints,
  placed: (at: Point) => PlacePart,
): TransferDocument['objects'][number]['shapes'][number] {
  return {
    form,
    ...(radius === undefined ? {} : { radius: round(radius) }),
    ...(axes === undefined ? {} : { axes: axes.map(round) }),
    ...(turn === undefined ? {} : { turn: round(turn) }),
    offCanvas,
    points: points.map(({ number, kind, edge, isCovered, at }) => ({
      number,
      kind,
      ...(edge === undefined ? {} : { edge }),
      covered: isCovered,
      ...placed(at),
    })),
  };
}

function sketchPart({ sketch }: Plan, measures: Pick<Measures, 'sketch'>): Pick<TransferDocument, 'sketch'> {
  const measure = measures.sketch;
  if (sketch === undefined || measure?.is !== 'measured') return {};
  const { width, height, stretch } = measure;
  return { sketch: { file: sketch.file, width, height, stretch: round(stretch) } };
}
