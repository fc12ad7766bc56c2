import {
  type DivisionSystem,
  type Node,
  type Owner,
  type Place,
  type PlaceBase,
  type Spot,
  t,
  type Word,
} from '../../grammar/index.js';
import { crossingByNumber } from './division.js';
import { type Box, type Point, between, boxCentre, isUsablePoint, edgeOfBox } from './geometry/point.js';
import { type CanvasUnits, canvasUnits, pointAt } from './lengths.js';
import type { Crossing, Division, Location } from './plan.js';
import { inWords, locate, plainNumber, type Problems } from './problems.js';

/** What a place in the text may refer to. */
export interface PlaceSurroundings {
  readonly canvas: CanvasUnits;
  readonly divisions: readonly Division[];
  readonly problems: Problems;
  /** The focal point; `undefined`, after reporting, when there is none or it refers back to here. */
  focus(asked: Location): Point | undefined;
  /** The box of an object; `undefined`, after reporting, when there is no such object or it refers back to here. */
  boxOf(name: Word, asked: Location): Box | undefined;
}

/** Where a place lies, in canvas units; `undefined`, after reporting why, when that can't be told. */
export function resolvePlace(
  place: Place,
  node: Pick<Node, 'line'>,
  surroundings: PlaceSurroundings,
): Point | undefined {
  const { canvas } = surroundings;
  const isPlain = place.base.kind === 'coordinates';
  const base = isPlain ? pointAt(place.base.at, canvas) : otherBase(place, node, surroundings);
  if (!base || (isPlain && place.moves.length === 0 && isUsablePoint(base))) return base;
  let { x, y } = base;
  for (const { amount, direction } of place.moves) {
    if (direction === 'left') x -= canvasUnits(amount, canvas, 'across');
    else if (direction === 'right') x += canvasUnits(amount, canvas, 'across');
    else if (direction === 'up') y -= canvasUnits(amount, canvas, 'down');
    else y += canvasUnits(amount, canvas, 'down');
  }
  if (isUsablePoint({ x, y })) return { x, y };
  const message = t('This place lies too far from the canvas to be drawn.');
  surroundings.problems.error('number out of range', message, locate(node, place));
  return undefined;
}

/** A crossing by name: of the system asked for, or of the plan's first system that has one of that name. */
export function findCrossing(
  divisions: readonly Division[],
  name: string,
  system?: DivisionSystem,
): { readonly system: DivisionSystem; readonly crossing: Crossing } | undefined {
  for (const division of divisions) {
    if (system !== undefined && division.system !== system) continue;
    const crossing = division.crossings.find((candidate) => candidate.name === name);
    if (crossing) return { system: division.system, crossing };
  }
  return undefined;
}

/** The place on a box that a spot names. */
export function spotOf(box: Box, spot: Spot): Point {
  const middle = boxCentre(box);
  const x = spot.endsWith('left') ? box.left : spot.endsWith('right') ? box.right : middle.x;
  const y = spot.startsWith('upper') ? box.top : spot.startsWith('lower') ? box.bottom : middle.y;
  return { x, y };
}

/** Where a place that is not given by numbers begins. */
function otherBase(
  place: Place,
  node: Pick<Node, 'line'>,
  surroundings: PlaceSurroundings,
): Point | undefined {
  const { base } = place;
  const location = locate(node, place);
  const { canvas } = surroundings;
  const canvasBox: Box = { left: 0, top: 0, right: canvas.width, bottom: canvas.height };
  switch (base.kind) {
    case 'coordinates':
      return pointAt(base.at, canvas);
    case 'focus':
      return surroundings.focus(location);
    case 'object': {
      const box = surroundings.boxOf(base.name, locate(node, base.name));
      return box && boxCentre(box);
    }
    case 'corner':
      return spotOf(canvasBox, base.spot);
    case 'edge': {
      const box = base.of ? surroundings.boxOf(base.of, locate(node, base.of)) : canvasBox;
      return box && alongEdge(box, base, surroundings);
    }
    case 'spot': {
      if (base.of?.kind !== 'name') return crossingAt(base.spot, base.of, location, surroundings);
      const box = surroundings.boxOf(base.of.name, locate(node, base.of.name));
      return box && spotOf(box, base.spot);
    }
    case 'crossing':
      return numberedCrossing(base, location, surroundings);
  }
}

/** Along the top and bottom from the left, along the sides from the top; the middle unless said. */
function alongEdge(
  box: Box,
  { side, along }: Extract<PlaceBase, { kind: 'edge' }>,
  { canvas }: PlaceSurroundings,
): Point {
  const [from, to] = edgeOfBox(box, side);
  if (!along) return between(from, to, 0.5);
  if (along.unit === '%') return between(from, to, along.value / 100);
  if (along.fraction && along.unit === undefined) return between(from, to, along.value);
  const level = side === 'top' || side === 'bottom';
  const length = canvasUnits(along, canvas, level ? 'across' : 'down');
  return level ? { x: from.x + length, y: from.y } : { x: from.x, y: from.y + length };
}

function crossingAt(
  spot: Spot,
  of: Extract<Owner, { kind: 'system' }> | undefined,
  location: Location,
  { canvas, divisions, problems }: PlaceSurroundings,
): Point | undefined {
  const found = findCrossing(divisions, spot, of?.system);
  if (found) return found.crossing.at;
  if (spot === 'centre' && !of) return { x: canvas.width / 2, y: canvas.height / 2 };
  reportNoCrossing(`\`${spot}\``, of?.system, location, divisions, problems);
  return undefined;
}

function numberedCrossing(
  { column, row, of }: Extract<PlaceBase, { kind: 'crossing' }>,
  location: Location,
  { divisions, problems }: PlaceSurroundings,
): Point | undefined {
  if (of?.kind === 'name') {
    const message = t('Only a division of the canvas has crossings, not `{0}`.', of.name.text);
    problems.error('no such crossing', message, location);
    return undefined;
  }
  const system = of?.system;
  for (const division of divisions) {
    if (system !== undefined && division.system !== system) continue;
    const crossing = crossingByNumber(division.crossings, column.value, row.value);
    if (crossing) return crossing.at;
  }
  reportNoCrossing(
    `${plainNumber(column.value)} ${plainNumber(row.value)}`,
    system,
    location,
    divisions,
    problems,
  );
  return undefined;
}

function reportNoCrossing(
  what: string,
  system: DivisionSystem | undefined,
  location: Location,
  divisions: readonly Division[],
  problems: Problems,
): void {
  const there = divisions.filter((division) => system === undefined || division.system === system);
  if (system !== undefined && there.length === 0) {
    problems.error(
      'no such crossing',
      t('The canvas is not divided by {0}: add it to `divide`.', system),
      location,
    );
    return;
  }
  const crossings = there.flatMap((division) => division.crossings);
  const inOrder = [...crossings].sort((one, other) => one.at.y - other.at.y || one.at.x - other.at.x);
  const names = [...new Set(inOrder.map(({ name }) => name))];
  const where = inWords(there.map((division) => `\`${division.system}\``));
  const lacking =
    there.length === 1
      ? t('{0} has no crossing {1} on this canvas', where, what)
      : t('{0} have no crossing {1} on this canvas', where, what);
  const among = inWords(names.map((name) => `\`${name}\``));
  const message =
    names.length === 0
      ? `${lacking}.`
      : names.length === 1
        ? t('{0}; there is {1}.', lacking, among)
        : t('{0}; there are {1}.', lacking, among);
  problems.error('no such crossing', message, location);
}
