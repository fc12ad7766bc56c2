import { parse } from '../../grammar/index.js';
import { measure } from '../../server/measure/measure.js';
import type { Measures } from '../../server/measure/measures.js';
import type { Point } from '../../server/plan/geometry/point.js';
import type { Plan } from '../../server/plan/plan.js';
import { resolvePlan } from '../../server/plan/resolve.js';

/** Parts of the whole, of the diagonal, or steps of value, that two figures may differ by and be the same. */
const SAME = 1e-6;
/**
 * The same for what is counted in cells of a raster, whose middles rounding puts on one side of a border or the other.
 */
const SAME_IN_CELLS = 0.002;

/** Whether the figures are to be read in a mirror. */
type Mirror = boolean;

/** What is measured, as parts of the diagonal and the canvas, in an order that no name or side decides. */
export function figures(text: string, mirror: Mirror = false) {
  const plan = resolvePlan(parse(text));
  const measures = measure(plan);
  return { exact: exactly(plan, measures, mirror), inCells: inCells(measures) };
}

function exactly(plan: Plan, measures: Measures, mirror: Mirror) {
  const { borders, emphasis, balance, spacing, tangents, eyePath, focus, hues, values } = measures;
  const { canvas } = plan;
  const part = (length: number) => length / canvas.diagonal;
  const at = ({ x, y }: Point) => [part(mirror ? canvas.width - x : x), part(y)];
  const side = (name: string) => (mirror ? name.replace(/left|right/, turned) : name);
  return {
    objects: measures.objects.map(({ share, hiddenShare, offCanvasShare }) => [
      share,
      hiddenShare,
      offCanvasShare,
    ]),
    borders: unordered(borders.borders.map((border) => ({ ...border, length: part(border.length) }))),
    atEdge: unordered(
      borders.atEdge.map(({ area, ...edge }) => [area, side(edge.side), part(edge.length)] as const),
    ),
    emphasis: {
      field: fieldOf(emphasis.field, mirror),
      strengths: emphasis.places.map(({ strength }) => strength),
      nearEdge: emphasis.nearEdge.length,
      focal: emphasis.focal && {
        strength: emphasis.focal.strength,
        rank: emphasis.focal.rank,
        rivals: emphasis.focal.rivals.length,
        means: emphasis.focal.means
          .filter(({ means }) => means !== 'detail')
          .map(({ there, elsewhere, holds }) => ({ there, elsewhere, holds })),
      },
    },
    values: [values.mean, values.range?.from, values.range?.to, ...values.steps.map(({ share }) => share)],
    planes: measures.planes,
    hues: { roles: hues.roles.map(({ name: _, ...role }) => role), temperature: hues.temperature },
    chromas: hues.chromas.map(({ chroma, fromFocus }) => [chroma, fromFocus]),
    balance: {
      offset: (mirror ? -1 : 1) * (balance.offset ?? 0),
      total: balance.total,
      principals: balance.principals.map(({ weight }) => weight),
    },
    sizes: spacing.principals.map(({ share, size }) => [share, size]),
    gaps: unordered(spacing.gaps.map(({ along, shareOfDiagonal }) => [along, shareOfDiagonal] as const)),
    touches: unordered(
      tangents.touches.map(({ one, other, shareOfDiagonal }) => [one, other, shareOfDiagonal]),
    ),
    edges: unordered(
      tangents.edges.map(({ object, shareOfDiagonal, ...edge }) => [
        object,
        side(edge.side),
        shareOfDiagonal,
      ]),
    ),
    corners: unordered(tangents.corners.map(({ object, corner }) => [object, side(corner)])),
    leads: eyePath.leads.map(({ from, end, nearest, missShare, passes, length }) => ({
      from: from.kind,
      end: at(end),
      nearest: nearest && at(nearest),
      missShare,
      passes: passes === undefined ? undefined : part(passes),
      length: part(length),
    })),
    angles: eyePath.angles.map(({ degrees }) => degrees / 180),
    exits: unordered(eyePath.exits.map(({ at: place, pull, length }) => [...at(place), pull, part(length)])),
    stops: eyePath.stops.map(({ strength, isSeen, isAtFocus }) => ({ strength, isSeen, isAtFocus })),
    focus: focus && [focus.fromCentre, focus.nearest?.distanceShare, ...focus.dominants],
  };
}

function inCells({ notan, emphasis }: Measures) {
  return {
    tones: notan.tones.map(({ share, pieces }) => ({ share, pieces: pieces.map((piece) => piece.share) })),
    seenThere: unordered(emphasis.focal?.seenThere.map(({ area, share }) => [area, share] as const) ?? []),
  };
}

function turned(side: string): string {
  return side === 'left' ? 'right' : 'left';
}

function fieldOf({ columns, strengths }: Measures['emphasis']['field'], mirror: Mirror): readonly number[] {
  return Array.from(strengths, (strength, cell) => {
    const column = cell % columns;
    return (mirror ? strengths[cell - column + columns - 1 - column] : strength) ?? 0;
  });
}

/** What no order of lines or names decides: a list that is compared without its order. */
function unordered<T>(list: readonly T[]): ReadonlySet<T> {
  return new Set(list);
}

/** Where two sets of figures differ, as paths of keys, with both figures. */
function differencesBetween(one: unknown, other: unknown, slack: number, at = ''): readonly string[] {
  if (typeof one === 'number' && typeof other === 'number') {
    return Math.abs(one - other) <= slack ? [] : [`${at}: ${one} and ${other}`];
  }
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
    return one === other ? [] : [`${at}: ${String(one)} and ${String(other)}`];
  }
  if (one instanceof Set && other instanceof Set) return differencesOfSets([...one], [...other], slack, at);
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) =>
    differencesBetween(
      (one as Record<string, unknown>)[key],
      (other as Record<string, unknown>)[key],
      slack,
      `${at}.${key}`,
    ),
  );
}

function differencesOfSets(
  one: readonly unknown[],
  other: readonly unknown[],
  slack: number,
  at: string,
): readonly string[] {
  const left = [...other];
  const missing = one.filter((item) => {
    const index = left.findIndex((candidate) => differencesBetween(item, candidate, slack).length === 0);
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
  return [
    ...missing.map((item) => `${at}: only one has ${JSON.stringify(item)}`),
    ...left.map((item) => `${at}: only the other has ${JSON.stringify(item)}`),
  ];
}

/** Where the figures of two pictures differ. */
export function differences(one: Figures, other: Figures): readonly string[] {
  return [
    ...differencesBetween(one.exact, other.exact, SAME),
    ...differencesBetween(one.inCells, other.inCells, SAME_IN_CELLS),
  ];
}

export type Figures = ReturnType<typeof figures>;
