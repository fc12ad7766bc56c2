import { describe, expect, it } from 'vitest';
import { type CanvasSides, divide } from './division.js';
import type { DivisionSystem } from '../../grammar/index.js';
import { distance, type Point } from './geometry/point.js';
import type { DivisionLine } from './plan.js';
import { planOf } from '../../tests/support/plan.js';
import { toldBy } from './test-support.js';

const PHI = (1 + Math.sqrt(5)) / 2;

function crossings(sides: CanvasSides, system: DivisionSystem): ReadonlyMap<string, Point> {
  return new Map(divide(sides, system).crossings.map(({ name, at }) => [name, at]));
}

function crossing(sides: CanvasSides, system: DivisionSystem, name: string): Point {
  const at = crossings(sides, system).get(name);
  if (at === undefined) throw new Error(`no crossing ${name} of ${system}`);
  return at;
}

function lies(point: Point, { from, to }: DivisionLine): boolean {
  const cross = (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
  return Math.abs(cross) < 1e-9 * distance(from, to) ** 2;
}

const ratios: readonly (readonly [string, number])[] = [
  ['root 2', Math.SQRT2],
  ['root 3', Math.sqrt(3)],
  ['root 4', 2],
  ['root 5', Math.sqrt(5)],
  ['golden', PHI],
];
const roots = [
  ['root 2', 2],
  ['root 3', 3],
  ['root 4', 4],
  ['root 5', 5],
] as const;

describe('diagonals and reciprocals', () => {
  it.each([
    ['root 2', Math.SQRT2, 2 / 3],
    ['root 3', Math.sqrt(3), 3 / 4],
    ['root 4', 2, 4 / 5],
    ['root 5', Math.sqrt(5), 5 / 6],
    ['golden', PHI, 0.7236],
  ])('put the eye of the %s rectangle where its diagonal is cut', (_, ratio, part) => {
    // r^2 / (1 + r^2) along the diagonal, from the right triangle: J. Hambidge, The Elements of Dynamic Symmetry, on
    // the diagonal and the reciprocal.
    const sides = { width: ratio, height: 1 };
    const eye = crossing(sides, 'diagonals', 'lower right');
    expect(distance({ x: 0, y: 0 }, eye) / Math.hypot(ratio, 1)).toBeCloseTo(part, 4);
  });

  it('lay the foot of the perpendicular where the right triangle puts it', () => {
    // Euclid VI, 8, corollary: w h^2 / (w^2 + h^2) across and h w^2 / (w^2 + h^2) down from the corner.
    const foot = crossing({ width: 4, height: 3 }, 'diagonals', 'lower left');
    expect(foot.x).toBeCloseTo((4 * 9) / 25, 12);
    expect(foot.y).toBeCloseTo((3 * 16) / 25, 12);
  });

  it.each(ratios)('cut off a reciprocal of the %s rectangle, of its own proportion', (_, ratio) => {
    // J. Hambidge, The Elements of Dynamic Symmetry: the reciprocal of a rectangle of ratio r is 1 / r.
    const { lines } = divide({ width: ratio, height: 1 }, 'diagonals');
    const cut = lines.find(({ from, to }) => from.x === 0 && from.y === 0 && to.x < ratio);
    expect(cut?.to.x).toBeCloseTo(1 / ratio, 12);
    expect(cut?.to.y).toBe(1);
  });

  it('cut off terms of Hambidge’s series on a canvas of two of them', () => {
    // J. Hambidge, The Elements of Dynamic Symmetry: 118 191 309 500 809 1309 2118 ..., each the sum of the two before.
    const series = [118, 191, 309, 500, 809, 1309, 2118, 3427, 5545, 8972, 14517];
    for (let term = 2; term + 1 < series.length; term++) {
      const [before, last, height, width] = series.slice(term - 2, term + 2) as [
        number,
        number,
        number,
        number,
      ];
      expect(before + last).toBe(height);
      const { lines } = divide({ width, height }, 'diagonals');
      const cut = lines.find(({ from, to }) => from.x === 0 && from.y === 0 && to.x < width);
      expect(cut?.to.x).toBeGreaterThan(last - 1);
      expect(cut?.to.x).toBeLessThan(last + 1);
    }
  });

  it('carry the perpendiculars to the long sides of an upright canvas', () => {
    const { lines } = divide({ width: 3, height: 4 }, 'diagonals');
    expect(lines).toContainEqual({ from: { x: 0, y: 0 }, to: { x: 3, y: 9 / 4 } });
    expect([...crossings({ width: 3, height: 4 }, 'diagonals').keys()].sort()).toEqual([
      'centre',
      'lower left',
      'lower right',
      'upper left',
      'upper right',
    ]);
  });

  it('are the two diagonals alone on a square', () => {
    const square = divide({ width: 40, height: 40 }, 'diagonals');
    expect(square.lines).toHaveLength(2);
    expect(square.crossings).toEqual([{ name: 'centre', at: { x: 20, y: 20 } }]);
  });
});

// Common practice, no source.
describe('armature', () => {
  const sides = { width: 120, height: 60 };

  it('has fourteen lines, none twice', () => {
    const { lines } = divide(sides, 'armature');
    expect(lines).toHaveLength(14);
    const ends = lines.map(({ from, to }) =>
      [from, to]
        .map(({ x, y }) => `${x},${y}`)
        .sort()
        .join(' '),
    );
    expect(new Set(ends).size).toBe(14);
  });

  it.each([
    ['centre', [60, 30]],
    ['upper left', [40, 20]],
    ['lower right', [80, 40]],
    ['upper centre', [60, 15]],
    ['middle right', [90, 30]],
    ['crossing 1 1', [30, 15]],
    ['crossing 5 5', [90, 45]],
  ])('%s', (name, at) => {
    const { x, y } = crossing(sides, 'armature', name);
    expect([x, y].map((side) => Math.round(side * 1e9) / 1e9)).toEqual(at);
  });

  it('meets three lines at the thirds and two at the quarters', () => {
    const { lines } = divide(sides, 'armature');
    const meeting = (name: string) =>
      lines.filter((line) => lies(crossing(sides, 'armature', name), line)).length;
    expect(['upper left', 'upper right', 'lower left', 'lower right'].map(meeting)).toEqual([3, 3, 3, 3]);
    expect(['crossing 1 1', 'crossing 5 1', 'upper centre', 'middle left'].map(meeting)).toEqual([
      2, 2, 2, 2,
    ]);
  });
});

describe('root rectangles', () => {
  it.each(roots)('%s is cut into parts of its own proportion', (system, n) => {
    // J. Hambidge, The Elements of Dynamic Symmetry: a root-n rectangle cut in n along its length gives n similar ones.
    const sides = { width: 10 * Math.sqrt(n), height: 10 };
    const uprights = divide(sides, system).lines.filter(({ from, to }) => from.x === to.x);
    expect(uprights).toHaveLength(n - 1);
    const [first = 0] = uprights.map(({ from }) => from.x);
    expect(sides.height / first).toBeCloseTo(Math.sqrt(n), 12);
  });

  it.each(roots)('%s has its first cut where the reciprocal ends', (system, n) => {
    const sides = { width: 10, height: 10 * Math.sqrt(n) };
    const { lines } = divide(sides, system);
    const cut = lines.find(({ from, to }) => from.x === 0 && from.y === 0 && to.y < sides.height * 0.99);
    expect(cut?.to.y).toBeCloseTo(sides.height / n, 12);
  });

  it.each(roots)('%s has its eyes on n + 1st parts', (system, n) => {
    // r^2 / (1 + r^2) = n / (n + 1) for the root-n rectangle.
    const eye = crossing({ width: Math.sqrt(n), height: 1 }, system, 'upper left');
    expect(eye.x).toBeCloseTo(Math.sqrt(n) / (n + 1), 12);
    expect(eye.y).toBeCloseTo(1 / (n + 1), 12);
  });

  it('is laid in from both ends of a longer canvas, as a square is by rabatment', () => {
    const { lines } = divide({ width: 70, height: 40 }, 'root 2');
    const edges = lines.filter(({ from, to }) => from.x === to.x).map(({ from }) => from.x);
    expect(edges[0]).toBeCloseTo(70 - 40 * Math.SQRT2, 12);
    expect(edges[1]).toBeCloseTo(40 * Math.SQRT2, 12);
  });

  it('is laid in from both long sides of a shorter canvas', () => {
    const { lines } = divide({ width: 50, height: 40 }, 'root 4');
    expect(lines.filter(({ from, to }) => from.y === to.y).map(({ from }) => from.y)).toEqual([15, 25]);
  });

  it('has eyes on a diagonal of what is laid in, at right angles to the way from the corner', () => {
    for (const [system] of roots) {
      for (const sides of [
        { width: 70, height: 40 },
        { width: 40, height: 47 },
        { width: 90, height: 20 },
      ]) {
        const { lines, crossings: eyes } = divide(sides, system);
        expect(eyes).toHaveLength(4);
        for (const { at } of eyes) {
          const [one, other] = lines.filter((line) => lies(at, line)) as [DivisionLine, DivisionLine];
          const dot =
            (one.to.x - one.from.x) * (other.to.x - other.from.x) +
            (one.to.y - one.from.y) * (other.to.y - other.from.y);
          expect(Math.abs(dot)).toBeLessThan(1e-9);
        }
      }
    }
  });
});

const systems: readonly DivisionSystem[] = ['diagonals', 'armature', 'root 2', 'root 3', 'root 4', 'root 5'];
const canvases: readonly CanvasSides[] = [
  { width: 40, height: 40 },
  { width: 60, height: 40 },
  { width: 40, height: 60 },
  { width: 41, height: 40 },
  { width: 400, height: 20 },
  { width: 7, height: 300 },
  { width: 56.6, height: 40 },
];

describe.each(systems)('%s', (system) => {
  it.each(canvases)('stays on a canvas of $width x $height, its names unique', (sides) => {
    const { lines, crossings: named } = divide(sides, system);
    const points = [...lines.flatMap(({ from, to }) => [from, to]), ...named.map(({ at }) => at)];
    const rounding = 1e-9 * Math.max(sides.width, sides.height);
    for (const { x, y } of points) {
      expect(x).toBeGreaterThanOrEqual(-rounding);
      expect(x).toBeLessThanOrEqual(sides.width + rounding);
      expect(y).toBeGreaterThanOrEqual(-rounding);
      expect(y).toBeLessThanOrEqual(sides.height + rounding);
    }
    expect(new Set(named.map(({ name }) => name)).size).toBe(named.length);
    expect(named.length).toBeGreaterThan(0);
  });

  it.each(canvases)('is its own mirror image on a canvas of $width x $height', (sides) => {
    const { lines, crossings: named } = divide(sides, system);
    const near = (one: Point, other: Point) => distance(one, other) < 1e-9 * (sides.width + sides.height);
    const mirrored = ({ x, y }: Point): Point => ({ x: sides.width - x, y });
    for (const { at } of named) expect(named.some((other) => near(mirrored(at), other.at))).toBe(true);
    for (const line of lines) {
      const [from, to] = [mirrored(line.from), mirrored(line.to)];
      expect(
        lines.some(
          (other) =>
            (near(other.from, from) && near(other.to, to)) || (near(other.from, to) && near(other.to, from)),
        ),
      ).toBe(true);
    }
  });

  it.each(canvases)('lets every crossing of $width x $height be named in a plan', (sides) => {
    for (const { name, at } of divide(sides, system).crossings) {
      const plan = planOf(
        `canvas  ${sides.width} x ${sides.height} cm\ndivide  golden, ${system}\nfocus   ${name} of ${system}`,
      );
      expect(toldBy(plan)).toEqual([]);
      expect(plan.focus?.at).toEqual(at);
    }
  });
});
