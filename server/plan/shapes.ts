import type { Extent, Node, NodeOf, Place, ShapeForm, Span, Spot, StatementOf } from '../../grammar/index.js';
import type { MirrorDirection } from './geometry/matrix.js';
import type { Point } from './geometry/point.js';
import { canvasUnits, pointAt, sharedUnit } from './lengths.js';
import { type PlaceSurroundings, resolvePlace } from './places.js';
import { locate } from './problems.js';
import { every, single } from './select.js';

/** One shape with all its places as numbers, canvas units. */
export type ShapeInput =
  | { readonly form: 'rectangle'; readonly from: Point; readonly to: Point }
  | { readonly form: 'ellipse'; readonly centre: Point; readonly radiusX: number; readonly radiusY: number }
  | { readonly form: 'outline' | 'smooth'; readonly points: readonly Point[] }
  | { readonly form: 'path'; readonly data: string }
  | {
      readonly form: 'part';
      readonly file: string;
      readonly part: string | undefined;
      readonly content: string;
    };

export type Sizing =
  | { readonly by: 'extent'; readonly width: number; readonly height: number }
  | { readonly by: 'width' | 'height'; readonly length: number }
  | { readonly by: 'factor'; readonly across: number; readonly down: number };

export interface Repetition {
  readonly times: number;
  readonly every: Point;
  readonly turning: number;
  readonly resized: number;
}

/** All that an object's outline is built from, in the order it is applied. */
export interface OutlineInput {
  readonly shapes: readonly ShapeInput[];
  readonly mirror?: MirrorDirection;
  readonly sizing: readonly Sizing[];
  readonly turn: number;
  readonly at?: { readonly point: Point; readonly by: Spot };
  readonly repeat?: Repetition;
}

/** Where shape `index` of `input.shapes` stands in the text, for what is found wrong with it later. */
export interface GatheredShapes {
  readonly input: OutlineInput;
  readonly places: readonly { readonly line: number; readonly span: Span }[];
}

/** Reads a file named in the plan; reports why it can't be had. `undefined` also while it is being fetched. */
export type ReadPart = (shape: Extract<ShapeForm, { form: 'file' }>, node: Node) => string | undefined;

const MOST_REPEATS = 500;

/** Reads an object's shape statements into numbers; a shape whose places can't be told is left out. */
export function gatherShapes(
  children: readonly Node[],
  surroundings: PlaceSurroundings,
  readPart: ReadPart,
): GatheredShapes {
  const { problems } = surroundings;
  const shapes: ShapeInput[] = [];
  const places: { line: number; span: Span }[] = [];
  for (const node of every(children, 'shape')) {
    const shape = shapeInput(node, surroundings, readPart);
    if (!shape) continue;
    shapes.push(shape);
    places.push({ line: node.line, span: faultSpan(node.statement) });
  }
  const mirror = single(children, 'mirror', problems);
  const turn = single(children, 'turn', problems);
  const at = placing(children, surroundings);
  const repeat = repetition(children, surroundings);
  return {
    input: {
      shapes,
      ...(mirror ? { mirror: mirror.statement.direction.choice } : {}),
      sizing: sizings(children, surroundings),
      turn: turn?.statement.degrees.value ?? 0,
      ...(at ? { at } : {}),
      ...(repeat ? { repeat } : {}),
    },
    places,
  };
}

function shapeInput(
  node: Node & NodeOf<'shape'>,
  surroundings: PlaceSurroundings,
  readPart: ReadPart,
): ShapeInput | undefined {
  const { shape } = node.statement;
  const { canvas } = surroundings;
  switch (shape.form) {
    case 'rectangle corners': {
      const from = resolvePlace(shape.from, node, surroundings);
      const to = resolvePlace(shape.to, node, surroundings);
      return from && to && { form: 'rectangle', from, to };
    }
    case 'rectangle': {
      const middle = middleOf(shape.at, node, surroundings);
      if (!middle) return undefined;
      const { x, y } = extentOf(shape.extent, surroundings);
      return {
        form: 'rectangle',
        from: { x: middle.x - x / 2, y: middle.y - y / 2 },
        to: { x: middle.x + x / 2, y: middle.y + y / 2 },
      };
    }
    case 'ellipse': {
      const centre = middleOf(shape.at, node, surroundings);
      const { x, y } = extentOf(shape.extent, surroundings);
      return centre && { form: 'ellipse', centre, radiusX: x / 2, radiusY: y / 2 };
    }
    case 'circle': {
      const centre = middleOf(shape.at, node, surroundings);
      const radius = canvasUnits(shape.across, canvas, 'across') / 2;
      return centre && { form: 'ellipse', centre, radiusX: radius, radiusY: radius };
    }
    case 'outline':
    case 'smooth':
      return { form: shape.form, points: pointsOf(node, shape.points, surroundings) };
    case 'path':
      return { form: 'path', data: shape.data.value };
    case 'file': {
      const content = readPart(shape, node);
      if (content === undefined) return undefined;
      return { form: 'part', file: shape.file.value, part: shape.part?.value, content };
    }
  }
}

/** The words that are to blame when a shape can't be read. */
function faultSpan(statement: StatementOf<'shape'>): Span {
  const { shape } = statement;
  if (shape.form === 'path') return shape.data;
  return shape.form === 'file' ? (shape.part ?? shape.file) : statement;
}

function middleOf(at: Place | undefined, node: Node, surroundings: PlaceSurroundings): Point | undefined {
  const { width, height } = surroundings.canvas;
  return at ? resolvePlace(at, node, surroundings) : { x: width / 2, y: height / 2 };
}

/** The points on the shape's own line and on the lines under it. */
function pointsOf(node: Node, first: readonly Place[], surroundings: PlaceSurroundings): readonly Point[] {
  const rows = [{ node, points: first }].concat(
    every(node.children, 'points').map((row) => ({ node: row, points: row.statement.points })),
  );
  return rows.flatMap((row) =>
    row.points.flatMap((place) => resolvePlace(place, row.node, surroundings) ?? []),
  );
}

function extentOf(extent: Extent, { canvas }: PlaceSurroundings): Point {
  const [width, height] = sharedUnit(extent.width, extent.height);
  return { x: canvasUnits(width, canvas, 'across'), y: canvasUnits(height, canvas, 'down') };
}

function sizings(children: readonly Node[], surroundings: PlaceSurroundings): readonly Sizing[] {
  const { canvas, problems } = surroundings;
  const sizes: Sizing[] = [];
  const extent = single(children, 'size', problems);
  if (extent) {
    const { x, y } = extentOf(extent.statement.extent, surroundings);
    sizes.push({ by: 'extent', width: x, height: y });
  }
  const along = single(children, 'size along', problems);
  if (along) {
    const wide = along.statement.along.choice === 'wide';
    const length = canvasUnits(along.statement.length, canvas, wide ? 'across' : 'down');
    sizes.push({ by: wide ? 'width' : 'height', length });
  }
  const resize = single(children, 'resize', problems);
  if (resize) {
    const across = resize.statement.width.percent / 100;
    sizes.push({
      by: 'factor',
      across,
      down: resize.statement.height ? resize.statement.height.percent / 100 : across,
    });
  }
  return sizes;
}

function placing(children: readonly Node[], surroundings: PlaceSurroundings): OutlineInput['at'] {
  const node = single(children, 'at', surroundings.problems);
  const point = node && resolvePlace(node.statement.place, node, surroundings);
  return point && { point, by: node?.statement.by?.choice ?? 'centre' };
}

function repetition(
  children: readonly Node[],
  { canvas, problems }: PlaceSurroundings,
): Repetition | undefined {
  const node = single(children, 'repeat', problems);
  if (!node) return undefined;
  const { times, every: step, turning, resized } = node.statement;
  if (!Number.isInteger(times.value) || times.value < 1 || times.value > MOST_REPEATS) {
    problems.error(
      'number out of range',
      `A shape is repeated 1 to ${MOST_REPEATS} times, in whole numbers.`,
      locate(node, times),
    );
    return undefined;
  }
  return {
    times: times.value,
    every: pointAt(step, canvas),
    turning: turning?.value ?? 0,
    resized: resized ? resized.percent / 100 : 1,
  };
}
