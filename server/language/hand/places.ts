import { type Node, parse, type Place } from '../../../grammar/index.js';
import { crossingsOf } from '../../drawing/handling/guides.js';
import { surroundingsOf } from '../../drawing/handling/surroundings.js';
import type { Spot } from '../../drawing/scene.js';
import { decimalsOf, lengthWords, replace } from '../../findings/edits/edit.js';
import { movedPlace } from '../../findings/edits.js';
import type { FixEdit } from '../../findings/finding.js';
import { type Box, boxCentre, boxHeight, boxWidth, distance, edgeOfBox } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { locate, plainNumber } from '../../plan/problems.js';

/** Part of the diagonal within which something is set down on a crossing or on the focal point. */
const ON_POINT = 0.0005;
/** The same for the middle of an object, which nothing in the drawing snaps to. */
const ON_MIDDLE = 0.005;
/** Part of the diagonal within which what lies on an edge stays on it. */
const ON_EDGE = 0.02;

/** `(12, 8.5)`, in canvas units as far as they are written. */
export function coordinates({ x, y }: Spot, { canvas }: Plan): string {
  const decimals = decimalsOf(canvas.unit);
  return `(${plainNumber(x, decimals)}, ${plainNumber(y, decimals)})`;
}

/** The crossing on which a spot lies, as the plan says it as a place. */
export function crossingAt(spot: Spot, plan: Plan): string | undefined {
  const slack = plan.canvas.diagonal * ON_POINT;
  return crossingsOf(plan).find(({ at, words }) => words !== undefined && distance(at, spot) <= slack)?.words;
}

/** `focus`, or the object in whose middle a spot lies, where its name reads as a place. */
export function namedPlaceAt(spot: Spot, plan: Plan): string | undefined {
  const { canvas, focus, objects } = plan;
  if (focus && distance(focus.at, spot) <= canvas.diagonal * ON_POINT) return 'focus';
  const slack = canvas.diagonal * ON_MIDDLE;
  const near = objects
    .filter(({ outline }) => outline.path.length > 0)
    .map(({ name, outline }) => ({ name, away: distance(boxCentre(outline.box), spot) }))
    .filter(({ name, away }) => away <= slack && readsAsObject(name))
    .sort((one, other) => one.away - other.away);
  return near[0]?.name;
}

/** Some names are words for places: `centre` as a place is a crossing. */
function readsAsObject(name: string): boolean {
  const [node] = parse(`lead x from (0, 0) to ${name}`).nodes;
  return node?.statement.kind === 'lead' && node.statement.to.base.kind === 'object';
}

/** A place that has been taken from one spot to another: what of its words can stay does. */
export function takenTo(
  place: Place,
  node: Pick<Node, 'line'>,
  from: Spot,
  to: Spot,
  plan: Plan,
): readonly FixEdit[] {
  const onEdge = place.moves.length === 0 ? alongEdge(place, node, to, plan) : undefined;
  if (onEdge) return onEdge;
  if (place.base.kind === 'coordinates' || place.moves.length > 0) {
    return movedPlace(place, node, to.x - from.x, to.y - from.y, plan.canvas);
  }
  return [replace(locate(node, place), coordinates(to, plan))];
}

/** Another part of the same edge, where the spot is near it. */
function alongEdge(
  { base, end }: Place,
  node: Pick<Node, 'line'>,
  to: Spot,
  plan: Plan,
): readonly FixEdit[] | undefined {
  if (base.kind !== 'edge') return undefined;
  const { canvas } = plan;
  const whole: Box = { left: 0, top: 0, right: canvas.width, bottom: canvas.height };
  const box = base.of ? surroundingsOf(plan).boxOf(base.of, locate(node, base.of)) : whole;
  if (!box) return undefined;
  const isLevel = base.side === 'top' || base.side === 'bottom';
  const [start] = edgeOfBox(box, base.side);
  const length = isLevel ? boxWidth(box) : boxHeight(box);
  const way = isLevel ? to.x - start.x : to.y - start.y;
  const along = Math.min(length, Math.max(0, way));
  const off = Math.hypot(isLevel ? to.y - start.y : to.x - start.x, way - along);
  if (length === 0 || off > canvas.diagonal * ON_EDGE) return undefined;
  const share = `${plainNumber((along / length) * 100)}%`;
  const stated = base.along;
  if (!stated) return [replace(locate(node, { start: end, end }), ` at ${share}`)];
  const isPart = stated.unit === '%' || (stated.unit === undefined && stated.fraction);
  const axis = isLevel ? 'across' : 'down';
  const words = isPart ? share : lengthWords(stated, canvas, axis, () => along, 'nearest');
  return [replace(locate(node, stated), words)];
}
