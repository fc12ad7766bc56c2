import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from '../../grammar/index.js';
import { measure } from '../../server/measure/measure.js';
import type { Measures } from '../../server/measure/measures.js';
import type { Point } from '../../server/plan/geometry/point.js';
import type { Plan } from '../../server/plan/plan.js';
import { resolvePlan } from '../../server/plan/resolve.js';
import { otherNames, written, type WrittenPicture } from '../findings/picture-text.js';
import { mirrored, type Picture, picture, scaled } from '../findings/pictures.js';

/** Another seed and more runs from outside, to look further than every test run does. */
const seed = Number(process.env['SEED'] ?? 13);
const runs = Number(process.env['RUNS'] ?? 25);

/** Parts of the whole, of the diagonal, or steps of value, that two figures may differ by and be the same. */
const SAME = 1e-6;
/** The same for what is counted in cells of a raster, whose middles rounding puts on one side of a border or the other. */
const SAME_IN_CELLS = 0.002;

/** Whether the figures are to be read in a mirror. */
type Mirror = boolean;

/** What is measured, as parts of the diagonal and the canvas, in an order that no name or side decides. */
function figures({ text }: WrittenPicture, mirror: Mirror = false) {
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
    borders: sorted(borders.borders.map((border) => ({ ...border, length: part(border.length) }))),
    atEdge: sorted(
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
    gaps: sorted(spacing.gaps.map(({ along, shareOfDiagonal }) => [along, shareOfDiagonal] as const)),
    touches: sorted(tangents.touches.map(({ one, other, shareOfDiagonal }) => [one, other, shareOfDiagonal])),
    edges: sorted(
      tangents.edges.map(({ object, shareOfDiagonal, ...edge }) => [
        object,
        side(edge.side),
        shareOfDiagonal,
      ]),
    ),
    corners: sorted(tangents.corners.map(({ object, corner }) => [object, side(corner)])),
    leads: eyePath.leads.map(({ from, end, missShare, passes, length }) => ({
      from: from.kind,
      end: at(end),
      missShare,
      passes: passes === undefined ? undefined : part(passes),
      length: part(length),
    })),
    angles: eyePath.angles.map(({ degrees }) => degrees / 180),
    exits: sorted(eyePath.exits.map(({ at: place, pull, length }) => [...at(place), pull, part(length)])),
    stops: eyePath.stops.map(({ strength, isSeen, isAtFocus }) => ({ strength, isSeen, isAtFocus })),
    focus: focus && [focus.fromCentre, focus.nearest?.distanceShare, ...focus.dominants],
  };
}

function inCells({ notan, emphasis }: Measures) {
  return {
    tones: notan.tones.map(({ share, pieces }) => ({ share, pieces: pieces.map((piece) => piece.share) })),
    seenThere: sorted(emphasis.focal?.seenThere.map(({ area, share }) => [area, share] as const) ?? []),
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

function sorted<T>(list: readonly T[]): readonly T[] {
  const key = (item: T) =>
    JSON.stringify(item, (_, figure: unknown) => (typeof figure === 'number' ? figure.toFixed(5) : figure));
  return list.toSorted((one, other) => (key(one) < key(other) ? -1 : 1));
}

/** Where two sets of figures differ, as paths of keys, with both figures. */
function differences(one: unknown, other: unknown, slack: number, at = ''): readonly string[] {
  if (typeof one === 'number' && typeof other === 'number') {
    return Math.abs(one - other) <= slack ? [] : [`${at}: ${one} and ${other}`];
  }
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
    return one === other ? [] : [`${at}: ${String(one)} and ${String(other)}`];
  }
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) =>
    differences(
      (one as Record<string, unknown>)[key],
      (other as Record<string, unknown>)[key],
      slack,
      `${at}.${key}`,
    ),
  );
}

function expectSame(writing: WrittenPicture, one: ReturnType<typeof figures>): void {
  const first = figures(writing);
  expect(
    [
      ...differences(first.exact, one.exact, SAME),
      ...differences(first.inCells, one.inCells, SAME_IN_CELLS),
    ].slice(0, 10),
    writing.text,
  ).toEqual([]);
}

function holds(test: (picture: Picture, shuffle: number) => void): void {
  fc.assert(fc.property(picture, fc.integer({ min: 1, max: 1000 }), test), { seed, numRuns: runs });
}

describe('what is measured of a picture', () => {
  it('is the same when left and right change over', () => {
    holds((one) => expectSame(written(one), figures(written(mirrored(one)), true)));
  });

  it.each([0.1, 3])('is the same %f times as large', (factor) => {
    holds((one) => expectSame(written(one), figures(written(scaled(one, factor)))));
  });

  it('is the same under other names', () => {
    holds((one) => expectSame(written(one), figures(written(one, otherNames))));
  });

  it('is the same when lines stand in another order', () => {
    holds((one, shuffle) => {
      const order = <T>(lines: readonly T[]): readonly T[] =>
        lines
          .map((line, index) => ({ line, key: Math.sin((index + 1) * shuffle) }))
          .sort((a, b) => a.key - b.key)
          .map(({ line }) => line);
      expectSame(written(one), figures(written(one, undefined, order)));
    });
  });
});
