import { t } from '../../../grammar/localised.js';
import type { Guides, Spot } from '../../../server/drawing/scene.js';
import { difference, distance, sum } from './place.js';

/** What of a moved thing may come to lie on a guide: the place it is held by, or a side of the box round it. */
export interface Anchor {
  /** From the place that the thing is held by. */
  readonly from: Spot;
  /** `its left side`; empty for the place that it is held by. */
  readonly name: string;
  /** A side comes to lie on a line in one direction only, of length one. */
  readonly along?: Spot;
}

export const across: Spot = { x: 1, y: 0 };
export const down: Spot = { x: 0, y: 1 };

export interface Snapped {
  /** Where the place that the thing is held by comes to lie. */
  readonly at: Spot;
  /** What lies where, if anything snaps: `on golden upper right`, `its left side on a division line`. */
  readonly words?: string;
  /** Where to show it. */
  readonly mark?: Spot;
}

export const held: Anchor = { from: { x: 0, y: 0 }, name: '' };

/** A crossing is preferred to a line that is nearer by so many times. */
const crossingPull = 2;

interface Offer {
  readonly anchor: Anchor;
  readonly to: Spot;
  /** `on golden upper right` */
  readonly where: string;
  readonly cost: number;
}

/**
 * The place that something near `at` snaps to: the nearest crossing, else the nearest division line.
 * @param reach how near it must be, canvas units
 * @param only the direction that it may move in, when it is kept to one
 */
export function snap(
  at: Spot,
  guides: Guides,
  reach: number,
  anchors: readonly Anchor[] = [held],
  only?: Spot,
): Snapped {
  const offers = anchors.flatMap((anchor) => offersFor(sum(at, anchor.from), anchor, guides, only));
  const best = offers
    .filter(({ anchor, to }) => distance(sum(at, anchor.from), to) <= reach)
    .reduce<Offer | undefined>((least, each) => (least && least.cost <= each.cost ? least : each), undefined);
  if (best === undefined) return { at };
  const { anchor, to, where } = best;
  return {
    at: sum(at, difference(to, sum(at, anchor.from))),
    words: [anchor.name, where].filter((word) => word !== '').join(' '),
    mark: to,
  };
}

function offersFor(place: Spot, anchor: Anchor, guides: Guides, only: Spot | undefined): readonly Offer[] {
  const along = anchor.along ?? only;
  if (anchor.along !== undefined && only !== undefined && isApart(cross(anchor.along, only))) return [];
  const crossings =
    anchor.along === undefined
      ? guides.crossings.filter(
          ({ at }) => only === undefined || !isApart(cross(only, difference(at, place))),
        )
      : [];
  return [
    ...crossings.map(({ at, name }) => ({
      anchor,
      to: at,
      where: name === 'focal point' ? t('on the focal point') : t('on {0}', name),
      cost: distance(place, at) / crossingPull,
    })),
    ...guides.lines.flatMap(({ from, to }) => {
      const met = along === undefined ? nearestOn(place, from, to) : meeting(place, from, to, along);
      if (met === undefined) return [];
      return [{ anchor, to: met, where: t('on a division line'), cost: distance(place, met) }];
    }),
  ];
}

const levelWithin = 1e-9;

function isApart(length: number): boolean {
  return Math.abs(length) > levelWithin;
}

function cross(one: Spot, other: Spot): number {
  return one.x * other.y - one.y * other.x;
}

/** The nearest place of a straight line between its ends. */
function nearestOn(place: Spot, from: Spot, to: Spot): Spot {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const square = x * x + y * y;
  const part = square === 0 ? 0 : ((place.x - from.x) * x + (place.y - from.y) * y) / square;
  const kept = Math.min(1, Math.max(0, part));
  return { x: from.x + kept * x, y: from.y + kept * y };
}

/** Where something that moves one way meets a line. */
function meeting(place: Spot, from: Spot, to: Spot, along: Spot): Spot | undefined {
  const turned = cross(along, difference(to, from));
  if (!isApart(turned)) return undefined;
  const part = cross(along, difference(place, from)) / turned;
  if (part < 0 || part > 1) return undefined;
  return { x: from.x + part * (to.x - from.x), y: from.y + part * (to.y - from.y) };
}

/** The middle of a thing and the four sides of the box round it, from the place that it is held by. */
export function anchorsOf(at: Spot, box: DOMRectReadOnly | undefined): readonly Anchor[] {
  if (box === undefined) return [held];
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const side = (name: string, along: Spot, place: Spot): Anchor => ({
    from: difference(place, at),
    name,
    along,
  });
  return [
    held,
    side(t('its left side'), across, { x: box.x, y: middle.y }),
    side(t('its right side'), across, { x: box.x + box.width, y: middle.y }),
    side(t('its top'), down, { x: middle.x, y: box.y }),
    side(t('its foot'), down, { x: middle.x, y: box.y + box.height }),
  ];
}
