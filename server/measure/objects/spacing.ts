import { largestOf } from '../../plan/extremes.js';
import { type Box, NO_BOX, boxRound } from '../../plan/geometry/point.js';
import type { Outline } from '../../plan/geometry/outline.js';
import type { Plan } from '../../plan/plan.js';
import type { SeenAreas } from '../areas/areas.js';
import type { Memory } from '../memory.js';
import { wholeOf } from '../areas/parts.js';
import { inBillionths } from '../areas/place-order.js';
import { signedArea } from '../../plan/geometry/path.js';
import { boxOfSeen } from './seen-outlines.js';

/**
 * Sizes and intervals of the principal objects, dominant and secondary, each taken with what lies on it. Shares are
 * parts of the canvas.
 */
export interface SpacingMeasure {
  /** Those of which something is seen, the largest size first. */
  readonly principals: readonly {
    readonly object: number;
    readonly share: number;
    /** What the eye takes for its size: its share, or of an object of several shapes that of the largest of them. */
    readonly size: number;
    /** Around all that is seen of it, canvas units. */
    readonly box: Box;
  }[];
  /** Each principal with the next smaller one, the most alike first; the difference as a part of the larger. */
  readonly sizePairs: readonly {
    readonly one: number;
    readonly other: number;
    readonly difference: number;
  }[];
  /** Clear space between neighbours, beside each other or over each other. */
  readonly gaps: readonly Gap[];
  /** Every two gaps in one row, the most alike first, and of those as alike the nearest to each other. */
  readonly gapPairs: readonly GapPair[];
}

export interface Gap {
  readonly along: 'across' | 'down';
  /** Left to right, or top to bottom. */
  readonly between: readonly [number, number];
  /** Canvas units. */
  readonly size: number;
  readonly shareOfDiagonal: number;
}

export interface GapPair {
  /** That on the left, or above. */
  readonly one: Gap;
  readonly other: Gap;
  /** How many gaps of the row lie between them; none when they share an object. */
  readonly apart: number;
  /** Part of the larger. */
  readonly difference: number;
}

/** Part of the diagonal; what stands closer stands together, with no interval to speak of. */
const CLEAR_SPACE = 0.01;
/** Distances that differ by less than this part are one, whatever rounding made of them. */
const ALIKE = 1e-7;
/** A picture has a handful of principals; of a crowd of them the largest are looked at. */
const MOST_PRINCIPALS = 100;

interface Mass {
  readonly object: number;
  readonly share: number;
  readonly size: number;
  readonly box: Box;
}

/**
 * How large the principals are and how far apart. A gap is told between two principals whose boxes lie side by side,
 * or one above the other, for some length, with at least 1 % of the diagonal between them, when each is the other's
 * nearest on that side. Boxes are those of what is seen. Nothing of this knows left from right or one unit from
 * another. `parts` as `partsOf` gives them.
 */
export function measureSpacing(
  plan: Plan,
  areas: SeenAreas,
  parts: readonly (readonly number[])[],
): SpacingMeasure {
  const masses = massesOf(plan, areas, parts);
  const least = CLEAR_SPACE * plan.canvas.diagonal;
  const across = neighbours(masses, ({ left, right, top, bottom }) => [left, right, top, bottom], least);
  const down = neighbours(masses, ({ left, right, top, bottom }) => [top, bottom, left, right], least);
  const gaps = [
    ...across.map((gap) => asGap(gap, 'across', plan.canvas.diagonal)),
    ...down.map((gap) => asGap(gap, 'down', plan.canvas.diagonal)),
  ];
  return {
    principals: masses,
    sizePairs: masses
      .slice(1)
      .flatMap(({ object, size }, index) => {
        const larger = masses[index];
        return larger ? [{ one: larger.object, other: object, difference: 1 - size / larger.size }] : [];
      })
      .sort(mostAlikeFirst),
    gaps,
    gapPairs: gapPairs(gaps),
  };
}

/** `measureSpacing`, kept in the memory as long as all that it hangs on. */
export function keptSpacing(
  plan: Plan,
  areas: SeenAreas,
  parts: readonly (readonly number[])[],
  memory: Memory,
): SpacingMeasure {
  const inputs: unknown[] = [areas, parts, plan.canvas.diagonal, ...plan.coveringOrder];
  for (const { role } of plan.objects) inputs.push(role);
  return memory.recall('spacing', '', inputs, () => measureSpacing(plan, areas, parts));
}

function mostAlikeFirst(
  one: { readonly difference: number },
  other: { readonly difference: number },
): number {
  return inBillionths(one.difference) - inBillionths(other.difference);
}

function massesOf(plan: Plan, areas: SeenAreas, parts: readonly (readonly number[])[]): readonly Mass[] {
  const position = new Int32Array(plan.objects.length).fill(-1);
  plan.coveringOrder.forEach((object, index) => (position[object] = index));
  return plan.objects
    .filter(({ role }) => role === 'dominant' || role === 'secondary')
    .map(({ index, outline }): Mass => {
      const layers = wholeOf(parts, index).flatMap((part) => areas.layers[position[part] ?? -1] ?? []);
      const seen = layers.filter(({ share }) => share > 0);
      const share = seen.reduce((sum, layer) => sum + layer.share, 0);
      return {
        object: index,
        share,
        size: share * largestShape(outline),
        box: seen.map(({ visible }) => boxOfSeen(visible)).reduce(boxRound, undefined) ?? NO_BOX,
      };
    })
    .filter(({ share }) => share > 0)
    .sort((one, other) => inBillionths(other.size) - inBillionths(one.size))
    .slice(0, MOST_PRINCIPALS);
}

const largestShapes = new WeakMap<Outline, number>();

/** Area of the largest of an object's shapes as a part of all of them; holes count as shapes, which is near enough. */
function largestShape(outline: Outline): number {
  const part = largestShapes.get(outline) ?? partOfLargest(outline);
  largestShapes.set(outline, part);
  return part;
}

function partOfLargest({ rings }: Outline): number {
  const areas = rings.map((ring) => Math.abs(signedArea(ring)));
  const all = areas.reduce((sum, area) => sum + area, 0);
  return all > 0 ? largestOf(areas) / all : 1;
}

/** A box seen along one axis: where it begins and ends there, and on the other one. */
type Span = readonly [from: number, to: number, low: number, high: number];

interface Neighbours {
  readonly before: number;
  readonly after: number;
  readonly size: number;
}

/** Pairs of which each is the other's nearest, whichever side one looks from. */
function neighbours(
  masses: readonly Mass[],
  spanOf: (box: Box) => Span,
  least: number,
): readonly Neighbours[] {
  const spans = masses.map(({ object, box }) => ({ object, span: spanOf(box) }));
  const onward = spans.toSorted((one, other) => one.span[0] - other.span[0]);
  const backward = spans.toSorted((one, other) => other.span[1] - one.span[1]);
  const nearestAfter = spans.flatMap(({ object: before, span }) =>
    nearest(onward, (next) => next[0] - span[1], span, least).map(({ object: after, size }) => ({
      before,
      after,
      size,
    })),
  );
  const nearestBefore = new Map(
    spans.map(({ object: after, span }) => {
      const found = nearest(backward, (last) => span[0] - last[1], span, least);
      return [after, new Set(found.map(({ object }) => object))];
    }),
  );
  return nearestAfter.filter(({ before, after }) => nearestBefore.get(after)?.has(before));
}

interface Placed {
  readonly object: number;
  readonly span: Span;
}

/**
 * The nearest of those beside a span, all of them when several are as near.
 * @param placed in the order of the clear space that `sizeOf` tells, the least first
 */
function nearest(
  placed: readonly Placed[],
  sizeOf: (span: Span) => number,
  beside: Span,
  least: number,
): readonly { readonly object: number; readonly size: number }[] {
  const found: { readonly object: number; readonly size: number }[] = [];
  let most = Infinity;
  for (const { object, span } of placed) {
    const size = sizeOf(span);
    if (size > most) break;
    const isClear = size >= least * (1 - ALIKE);
    if (!isClear || Math.min(span[3], beside[3]) - Math.max(span[2], beside[2]) <= least * ALIKE) continue;
    if (found.length === 0) most = size * (1 + ALIKE);
    found.push({ object, size });
  }
  return found;
}

function asGap({ before, after, size }: Neighbours, along: Gap['along'], diagonal: number): Gap {
  return { along, between: [before, after], size, shareOfDiagonal: size / diagonal };
}

function gapPairs(gaps: readonly Gap[]): readonly GapPair[] {
  const after = (gap: Gap): readonly Gap[] =>
    gaps.filter((next) => next.along === gap.along && next.between[0] === gap.between[1]);
  const next = new Map(gaps.map((gap) => [gap, after(gap)]));
  return gaps
    .flatMap((one) =>
      rowFrom(one, next).map(({ gap: other, apart }) => ({
        one,
        other,
        apart,
        difference: Math.abs(one.size - other.size) / Math.max(one.size, other.size),
      })),
    )
    .sort((one, other) => mostAlikeFirst(one, other) || one.apart - other.apart);
}

/** The gaps of the row that a gap begins, each by the shortest way. */
function rowFrom(
  first: Gap,
  next: ReadonlyMap<Gap, readonly Gap[]>,
): readonly { readonly gap: Gap; readonly apart: number }[] {
  const row: { readonly gap: Gap; readonly apart: number }[] = [];
  const known = new Set<Gap>();
  let nearest: readonly Gap[] = next.get(first) ?? [];
  for (let apart = 0; nearest.length > 0; apart++) {
    const added = [...new Set(nearest)].filter((gap) => !known.has(gap));
    for (const gap of added) {
      known.add(gap);
      row.push({ gap, apart });
    }
    nearest = added.flatMap((gap) => next.get(gap) ?? []);
  }
  return row;
}
