import { pointsOf } from '../../plan/build-outline.js';
import type { Outline, Ring } from '../../plan/geometry/outline.js';
import { type Point, between, boxCentre, boxDiagonal, distance } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import { runsAcross } from '../areas/parts.js';
import { inSteps } from '../areas/place-order.js';
import { once } from '../memory.js';
import { type Meeting, lengthOf, lengthWithin, meetingOf } from '../tangency/meeting.js';
import { MOST_SIDES, relationOf } from '../tangency/relation.js';
import { seenBorder, sidesOf } from '../tangency/seen-border.js';
import { centreOf } from './balance.js';
import { AS_NEAR } from './meant-touches.js';
import { type Beside, MOST_NEIGHBOURS, type Seen } from './seen-outlines.js';
import type { Touch } from './tangents.js';

/** Part of the diagonal: how far apart is looked, whatever the limit of a rule. */
export const TANGENT_REACH = 0.02;
/** What reaches less far over another's border only touches it. */
export const TOUCHING = 0.0005;
/** So that what is just at a limit keeps it at any size of the canvas. */
const ROUNDING = 1e-9;
/** Borders that stay as near as they come, to `AS_NEAR`, over a third of the smaller's extent run along each other. */
const LONG = 1 / 3;
/** Where that is more than this part of the smaller's border, it is framed by the other or frames it. */
const ALL_ROUND = 0.6;
/** Borders that are one for longer than the second, within the first, were drawn to be one. Parts of the diagonal. */
const SAME_LINE = 1e-6;
const SHARED = 0.002;
/** All that comes near each other, whatever the painter meant. */
export interface NearOnes {
  readonly touches: readonly Touch[];
  /** Those of one object along which it keeps as near, asked for or not. */
  readonly gapsOf: (object: number) => readonly Touch[];
}

/** A touch with what it is sorted by: how near it comes, and of those as near the order in which they are found. */
export interface PlacedTouch {
  readonly touch: Touch;
  readonly steps: number;
  readonly order: number;
}

const NONE: readonly Touch[] = [];
const known = new WeakMap<Beside, readonly PlacedTouch[]>();

/**
 * What an object comes near of those larger than itself; the same list as long as the same things are beside each
 * other.
 *
 * @param place of the object among all
 */
export function touchesAt(beside: Beside, place: number, canvas: Canvas): readonly PlacedTouch[] {
  const kept = known.get(beside);
  if (kept) return kept;
  const touches = touchesBeside(beside, canvas, true).map((touch, index): PlacedTouch => ({
    touch,
    steps: inSteps(touch.gap, canvas.diagonal),
    order: place * MOST_NEIGHBOURS + index,
  }));
  known.set(beside, touches);
  return touches;
}

/** The near ones of some objects with all others, for a picture that is only tried: nothing of it is kept. */
export function nearTo(only: ReadonlySet<number>, besides: readonly Beside[], canvas: Canvas): NearOnes {
  const found: (readonly Touch[])[] = [];
  const touchesOf = (index: number): readonly Touch[] => {
    const beside = besides[index];
    return (found[index] ??= beside ? touchesBeside(beside, canvas, false) : NONE);
  };
  const byObject = once(() => {
    const places = new Map<number, number[]>();
    besides.forEach(({ here, others }, index) => {
      for (const { object } of [here, ...others]) addTo(places, object, index);
    });
    return places;
  });
  const gaps = new Map<number, readonly Touch[]>();
  return {
    touches: besides.flatMap(({ here, others }, index) => {
      const isAsked = only.has(here.object) || others.some(({ object }) => only.has(object));
      return isAsked ? touchesOf(index).filter(({ one, other }) => only.has(one) || only.has(other)) : [];
    }),
    gapsOf: (object) => {
      const own =
        gaps.get(object) ??
        (byObject().get(object) ?? []).flatMap((index) =>
          touchesOf(index).filter(({ one, other, along }) => along && (one === object || other === object)),
        );
      gaps.set(object, own);
      return own;
    },
  };
}

/** Adds a thing to the list of its key. */
export function addTo<Key, Thing>(lists: Map<Key, Thing[]>, key: Key, thing: Thing): void {
  const own = lists.get(key);
  if (own) own.push(thing);
  else lists.set(key, [thing]);
}

type FoundTouch = Omit<Touch, 'one' | 'other'>;

/** What an outline was found to come near, with all that it hangs on. */
interface KeptTouches {
  readonly visible: readonly Ring[];
  readonly diagonal: number;
  readonly others: readonly KeptOther[];
}

interface KeptOther {
  readonly outline: Outline;
  readonly visible: readonly Ring[];
  readonly isBehind: boolean;
  readonly found: FoundTouch | undefined;
}

const keptTouches = new WeakMap<Outline, KeptTouches>();

function touchesBeside({ here, others }: Beside, canvas: Canvas, keeps: boolean): readonly Touch[] {
  const { diagonal } = canvas;
  const { visible } = here.layer;
  const last = keptTouches.get(here.outline);
  const usable = last?.visible === visible && last.diagonal === diagonal ? last.others : [];
  const now = others.map((there, index): KeptOther => {
    const isSame = (other: KeptOther | undefined): boolean =>
      other?.outline === there.outline &&
      other.visible === there.layer.visible &&
      other.isBehind === there.position < here.position;
    const kept = isSame(usable[index]) ? usable[index] : usable.find(isSame);
    if (kept) return kept;
    const isBehind = there.position < here.position;
    return {
      outline: there.outline,
      visible: there.layer.visible,
      isBehind,
      found: isBehind ? touchBetween(there, here, canvas) : touchBetween(here, there, canvas),
    };
  });
  if (keeps) keptTouches.set(here.outline, { visible, diagonal, others: now });
  const touches: Touch[] = [];
  for (const [index, { found, isBehind }] of now.entries()) {
    const there = others[index];
    if (!found || !there) continue;
    const [one, other] = isBehind ? [there, here] : [here, there];
    touches.push({ one: one.object, other: other.object, ...found });
  }
  return touches;
}

function touchBetween(one: Seen, other: Seen, canvas: Canvas): FoundTouch | undefined {
  const relation = relationOf(one.outline, other.outline, TOUCHING * canvas.diagonal);
  if (relation === 'crossing' || relation === 'first in second') return undefined;
  const within = relation === 'second in first';
  const grounds = [one, other].every(({ outline }) => runsAcross(outline.box, canvas));
  if (within && runsAcross(other.outline.box, canvas)) return undefined;
  if (Math.max(pointsOf(one.outline), pointsOf(other.outline)) > MOST_SIDES) return undefined;
  const borders = [one, other].map(({ outline, layer }) => seenBorder(outline, layer, canvas));
  const [border, otherBorder] = borders;
  if (!border || !otherBorder) return undefined;
  const middle = { x: canvas.width / 2, y: canvas.height / 2 };
  const meeting = meetingOf(border, otherBorder, TANGENT_REACH * canvas.diagonal, middle);
  if (!meeting) return undefined;
  const nearest = meeting.gap + AS_NEAR * canvas.diagonal;
  const oneIsSmaller = one.size < other.size;
  const [smaller, larger] = oneIsSmaller ? [border, otherBorder] : [otherBorder, border];
  const extent = boxDiagonal(oneIsSmaller ? one.box : other.box);
  const beside = lengthWithin(smaller, larger, nearest);
  const along = beside > LONG * extent;
  if (along) {
    if (meeting.gap <= (TOUCHING + ROUNDING) * canvas.diagonal || grounds) return undefined;
    if (beside > ALL_ROUND * lengthOf(smaller)) return undefined;
  }
  if (meeting.gap <= SAME_LINE * canvas.diagonal) {
    // Against the whole outline behind: where both run along one line, the front one hides that of the other.
    const shared = lengthWithin(otherBorder, sidesOf(one.outline), SAME_LINE * canvas.diagonal);
    if (shared > SHARED * canvas.diagonal) return undefined;
  }
  return {
    gap: meeting.gap,
    shareOfDiagonal: meeting.gap / canvas.diagonal,
    at: between(meeting.on, meeting.onOther, 0.5),
    away: directionOf(meeting, other, canvas),
    within,
    along,
  };
}

/** Where they touch there is no way from one to the other: then towards the middle of what is seen of the other. */
function directionOf({ on, onOther, gap }: Meeting, other: Seen, canvas: Canvas): Point {
  const apart = gap > TOUCHING * canvas.diagonal;
  const from = apart ? on : between(on, onOther, 0.5);
  const to = apart ? onOther : (centreOf(other.layer.visible) ?? boxCentre(other.box));
  const length = distance(from, to);
  return length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 0, y: 1 };
}
