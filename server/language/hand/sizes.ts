import { type Node, type NodeOf, type ShapeForm, t } from '../../../grammar/index.js';
import { resized } from '../../drawing/handling/frame.js';
import { frameOf, setDownFrom } from '../../drawing/handling/framing.js';
import type { Hold } from '../../drawing/handling/grips.js';
import { surroundingsOf } from '../../drawing/handling/surroundings.js';
import type { Frame } from '../../drawing/scene.js';
import { movedPlace, stretchEdit } from '../../findings/edits.js';
import type { FixEdit } from '../../findings/finding.js';
import type { Point } from '../../plan/geometry/point.js';
import { type PlaceSurroundings, resolvePlace } from '../../plan/places.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { every } from '../../plan/select.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, edits, refusal } from './attempt.js';
import type { HandChange } from './change.js';
import { moveObject } from './moves.js';

/** Part of a whole below which nothing has gone anywhere. */
const NOWHERE = 1e-9;

type Sizing = Extract<HandChange, { kind: 'size' }>;

/** An object with a handle of its frame put down at a place. */
export function sizeTo(snapshot: Snapshot, { grip, held }: Hold, change: Sizing): Attempt {
  const { plan } = snapshot;
  if (grip.fixed !== undefined) return refusal(grip.fixed);
  const surroundings = surroundingsOf(plan);
  const object = held.kind === 'object' ? held.object : undefined;
  const frame = object && frameOf(object, surroundings);
  if (!object || !frame)
    return refusal(t('{0} has no size of its own that could be changed here.', grip.name));
  const after = resized(frame, change.handle, change.to, change.keepsProportion);
  const { children } = object.node;
  const corners = cornersOf(children, surroundings);
  const isSetDown = every(children, 'at').length > 0;
  return edits([
    ...(corners ? cornerEdits(plan, corners, after, isSetDown) : stretched(plan, object, frame, after)),
    ...(corners && !isSetDown ? [] : followed(snapshot, object, surroundings, frame, after)),
  ]);
}

/** Its lengths or shares say the new size. */
function stretched(
  plan: Plan,
  object: PlanObject,
  { width, height }: Frame,
  after: Frame,
): readonly FixEdit[] {
  const across = timesAs(after.width, width);
  const down = timesAs(after.height, height);
  return across === 1 && down === 1 ? [] : (stretchEdit(plan, object, { across, down }) ?? []);
}

/** The object moved so that what is opposite of the handle stays where it is. */
function followed(
  snapshot: Snapshot,
  object: PlanObject,
  surroundings: PlaceSurroundings,
  frame: Frame,
  after: Frame,
): readonly FixEdit[] {
  const [across, down] = [timesAs(after.width, frame.width), timesAs(after.height, frame.height)];
  const before = setDownFrom(object, frame, surroundings);
  const now = setDownFrom(object, frame, surroundings, across, down);
  const { diagonal } = snapshot.plan.canvas;
  return moveObject(
    snapshot,
    object,
    settled(after.middle.x - frame.middle.x + now.x - before.x, diagonal),
    settled(after.middle.y - frame.middle.y + now.y - before.y, diagonal),
  );
}

type CornerShape = Extract<ShapeForm, { form: 'rectangle corners' }>;

/** A rectangle that its two corners alone say the size of. */
interface Corners {
  readonly node: NodeOf<'shape'> & Node;
  readonly shape: CornerShape;
  readonly from: Point;
  readonly to: Point;
}

function cornersOf(children: readonly Node[], surroundings: PlaceSurroundings): Corners | undefined {
  const isSized = children.some(({ statement }) => ['size', 'size along', 'resize'].includes(statement.kind));
  const [node, ...others] = every(children, 'shape');
  if (!node || others.length > 0 || isSized) return undefined;
  const { shape } = node.statement;
  if (shape.form !== 'rectangle corners') return undefined;
  const from = resolvePlace(shape.from, node, surroundings);
  const to = resolvePlace(shape.to, node, surroundings);
  return from && to && { node, shape, from, to };
}

/** The sides that do not stay change; where an `at` says the place, those are the right side and the foot. */
function cornerEdits(
  { canvas }: Plan,
  { node, shape, from, to }: Corners,
  { middle, width, height }: Frame,
  isSetDown: boolean,
): readonly FixEdit[] {
  const left = Math.min(from.x, to.x);
  const top = Math.min(from.y, to.y);
  const first = isSetDown ? { x: left, y: top } : { x: middle.x - width / 2, y: middle.y - height / 2 };
  const last = { x: first.x + width, y: first.y + height };
  return [
    { place: shape.from, at: from },
    { place: shape.to, at: to },
  ].flatMap(({ place, at }) =>
    movedPlace(
      place,
      node,
      settled((at.x === left ? first.x : last.x) - at.x, canvas.diagonal),
      settled((at.y === top ? first.y : last.y) - at.y, canvas.diagonal),
      canvas,
    ),
  );
}

function timesAs(length: number, before: number): number {
  return 1 + settled(length / before - 1, 1);
}

/** Without what floating sums leave of nothing. */
function settled(way: number, whole: number): number {
  return Math.abs(way) < NOWHERE * whole ? 0 : way;
}
