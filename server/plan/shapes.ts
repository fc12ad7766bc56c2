import {
  isKind,
  type Node,
  type NodeOf,
  type Place,
  type ShapeForm,
  type Span,
  type Spot,
  type StatementOf,
  t,
} from '../../grammar/index.js';
import type { MirrorDirection } from './geometry/matrix.js';
import type { Point } from './geometry/point.js';
import { pointAt, sideLength, sidesOf } from './lengths.js';
import type { ObjectBlock } from './object-block.js';
import { type PlaceSurroundings, resolvePlace } from './places.js';
import type { Location } from './plan.js';
import { locate, type Problems } from './problems.js';
import { factorOf } from './shares.js';

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

type ShapeNode = Node & NodeOf<'shape'>;

/** Where the parts of the input stand in the text, for what is found wrong with them later. */
export interface GatheredShapes {
  readonly input: OutlineInput;
  /** In the order of `input.shapes`. */
  readonly from: readonly ShapeNode[];
  readonly repeatNode: (Node & NodeOf<'repeat'>) | undefined;
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

const NONE: readonly never[] = [];

/** Reads a file named in the plan; reports why it can't be had. `undefined` also while it is being fetched. */
export type ReadPart = (shape: Extract<ShapeForm, { form: 'file' }>, node: Node) => string | undefined;

const MOST_REPEATS = 500;

/** Reads an object's shape statements into numbers; a shape whose places can't be told is left out. */
export function gatherShapes(
  block: ObjectBlock,
  surroundings: PlaceSurroundings,
  readPart: ReadPart,
): GatheredShapes {
  const { problems } = surroundings;
  const { shapes, from } = readShapes(block.shapes ?? NONE, surroundings, readPart);
  const mirror = block.one('mirror', block.mirror, problems);
  const turn = block.one('turn', block.turn, problems);
  const at = placing(block, surroundings);
  const repeatNode = block.one('repeat', block.repeat, problems);
  const repeat = repeatNode && repetition(repeatNode, surroundings);
  const input: Writable<OutlineInput> = {
    shapes,
    sizing: sizings(block, surroundings),
    turn: turn?.statement.degrees.value ?? 0,
  };
  if (mirror) input.mirror = mirror.statement.direction.choice;
  if (at) input.at = at;
  if (repeat) input.repeat = repeat;
  return { input, from, repeatNode };
}

function readShapes(
  nodes: readonly ShapeNode[],
  surroundings: PlaceSurroundings,
  readPart: ReadPart,
): { readonly shapes: readonly ShapeInput[]; readonly from: readonly ShapeNode[] } {
  const read = nodes.map((node) => shapeInput(node, surroundings, readPart));
  if (areAllThere(read)) return { shapes: read, from: nodes };
  return { shapes: read.filter((shape) => shape !== undefined), from: nodes.filter((_, at) => read[at]) };
}

function areAllThere<Item>(items: readonly (Item | undefined)[]): items is readonly Item[] {
  return !items.includes(undefined);
}

/** Where a shape can't be read: the words that are to blame. */
export function faultPlace(node: ShapeNode): Location {
  return locate(node, faultSpan(node.statement));
}

function shapeInput(
  node: ShapeNode,
  surroundings: PlaceSurroundings,
  readPart: ReadPart,
): ShapeInput | undefined {
  const { shape } = node.statement;
  const { canvas, problems } = surroundings;
  switch (shape.form) {
    case 'rectangle corners': {
      const from = resolvePlace(shape.from, node, surroundings);
      const to = resolvePlace(shape.to, node, surroundings);
      return from && to && { form: 'rectangle', from, to };
    }
    case 'rectangle': {
      const middle = middleOf(shape.at, node, surroundings);
      const sides = sidesOf(shape.extent, canvas, node, problems);
      if (!middle || !sides) return undefined;
      return {
        form: 'rectangle',
        from: { x: middle.x - sides.x / 2, y: middle.y - sides.y / 2 },
        to: { x: middle.x + sides.x / 2, y: middle.y + sides.y / 2 },
      };
    }
    case 'ellipse': {
      const centre = middleOf(shape.at, node, surroundings);
      const sides = sidesOf(shape.extent, canvas, node, problems);
      return centre && sides && { form: 'ellipse', centre, radiusX: sides.x / 2, radiusY: sides.y / 2 };
    }
    case 'circle': {
      const centre = middleOf(shape.at, node, surroundings);
      const across = sideLength(shape.across, canvas, 'across', node, problems);
      if (!centre || across === undefined) return undefined;
      return { form: 'ellipse', centre, radiusX: across / 2, radiusY: across / 2 };
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
  const points: Point[] = [];
  addPoints(points, node, first, surroundings);
  for (const row of node.children)
    if (isKind(row, 'points')) addPoints(points, row, row.statement.points, surroundings);
  return points;
}

function addPoints(
  points: Point[],
  node: Node,
  places: readonly Place[],
  surroundings: PlaceSurroundings,
): void {
  for (const place of places) {
    const point = resolvePlace(place, node, surroundings);
    if (point) points.push(point);
  }
}

function sizings(block: ObjectBlock, surroundings: PlaceSurroundings): readonly Sizing[] {
  const size = block.sized(surroundings.problems);
  const sizing = size && (isKind(size, 'size') ? bothSides(size, surroundings) : oneSide(size, surroundings));
  const factors = resizing(block, surroundings.problems);
  if (!sizing) return factors ? [factors] : NONE;
  return factors ? [sizing, factors] : [sizing];
}

function bothSides(node: Node & NodeOf<'size'>, { canvas, problems }: PlaceSurroundings): Sizing | undefined {
  const sides = sidesOf(node.statement.extent, canvas, node, problems);
  return sides && { by: 'extent', width: sides.x, height: sides.y };
}

function oneSide(
  node: Node & NodeOf<'size along'>,
  { canvas, problems }: PlaceSurroundings,
): Sizing | undefined {
  const wide = node.statement.along.choice === 'wide';
  const axis = wide ? 'across' : 'down';
  const length = sideLength(node.statement.length, canvas, axis, node, problems);
  return length === undefined ? undefined : { by: wide ? 'width' : 'height', length };
}

function resizing(block: ObjectBlock, problems: Problems): Sizing | undefined {
  const node = block.one('resize', block.resize, problems);
  if (!node) return undefined;
  const { width, height } = node.statement;
  const across = factorOf(width, node, problems);
  const down = height ? factorOf(height, node, problems) : across;
  return across === undefined || down === undefined ? undefined : { by: 'factor', across, down };
}

function placing(block: ObjectBlock, surroundings: PlaceSurroundings): OutlineInput['at'] {
  const node = block.one('at', block.at, surroundings.problems);
  const point = node && resolvePlace(node.statement.place, node, surroundings);
  return point && { point, by: node?.statement.by?.choice ?? 'centre' };
}

function repetition(
  node: Node & NodeOf<'repeat'>,
  { canvas, problems }: PlaceSurroundings,
): Repetition | undefined {
  const { times, every: step, turning, resized } = node.statement;
  if (!Number.isInteger(times.value) || times.value < 1 || times.value > MOST_REPEATS) {
    problems.error(
      'number out of range',
      t('A shape is repeated 1 to {0} times, in whole numbers.', MOST_REPEATS),
      locate(node, times),
    );
    return undefined;
  }
  return {
    times: times.value,
    every: pointAt(step, canvas),
    turning: turning?.value ?? 0,
    resized: (resized && factorOf(resized, node, problems)) ?? 1,
  };
}
