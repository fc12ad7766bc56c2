import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CrossingCount } from './crossing-count.js';
import { EMPTY_OUTLINE, type Outline, polygon, rectangle } from './outline.js';
import { ringPoints } from './path.js';

const CANVAS = { width: 40, height: 30 };
type Place = readonly [number, number];

const shape = (...places: readonly Place[]) => polygon(places.map(([x, y]) => ({ x, y })));

/** Teeth from one side to the other, each with two edges over the whole length. */
function comb(teeth: number, at: (along: number, across: number) => Place): Outline {
  const tooth = (i: number): readonly Place[] => {
    const [from, to] = [1 + (28 * i) / teeth, 1 + (28 * (i + 0.5)) / teeth];
    return [at(from, 0.8), at(from, 29.3), at(to, 29.3), at(to, 0.8)];
  };
  return shape(...Array.from({ length: teeth }, (_, i) => tooth(i)).flat());
}
const upright = (teeth: number) => comb(teeth, (x, y) => [x, y]);
const level = (teeth: number) => comb(teeth, (y, x) => [x, y]);

function countOf(...outlines: readonly Outline[]): number {
  const count = new CrossingCount(CANVAS, 1e6, 1e5);
  for (const outline of outlines) expect(count.lay(outline)).toBe(true);
  return count.crossings;
}

const square = (x: number, y: number, side: number) => rectangle({ x, y }, { x: x + side, y: y + side });

/** Over all of the canvas, and farther. */
const veil = square(-1, -6, 42);
const laidTwice: Outline = { ...veil, rings: [...veil.rings, ...veil.rings] };
const turnedRound = (ring: Outline['rings'][number]) =>
  polygon([...ringPoints(ring)].reverse()).rings[0] ?? ring;

describe('crossings of outlines', () => {
  it.each<[string, number, readonly Outline[]]>([
    ['none alone', 0, [square(3, 3, 9)]],
    ['none with what has no shape', 0, [square(3, 3, 9), EMPTY_OUTLINE]],
    ['two of two squares that overlap', 2, [square(3, 3, 9), square(8.3, 7.1, 9)]],
    ['none of squares side by side', 0, [square(3, 3, 9), square(12, 3, 9)]],
    ['none of the same shape twice', 0, [square(3, 3, 9), square(3, 3, 9)]],
    [
      'one each where corners lie on the other border',
      2,
      [square(10, 10, 10), shape([15, 10], [20, 15], [30, 2])],
    ],
    ['none off the canvas', 0, [square(-20, 3, 9), square(-15, -1, 9)]],
    ['those of the part on the canvas', 2, [rectangle({ x: -90, y: 3 }, { x: 9, y: 9 }), square(5, 5, 60)]],
    ['four edges a tooth and tooth', 4 * 20 * 30, [upright(20), level(30)]],
  ])('%s', (_, crossings, outlines) => expect(countOf(...outlines)).toBe(crossings));

  it('are not those under what fills the place', () => {
    const under = [upright(20), level(30)];
    expect(countOf(...under, square(0.3, 0.3, 29.6), square(5.1, 5.1, 9))).toBe(countOf(...under));
  });

  it('are seen through holes', () => {
    const frame: Outline = {
      ...square(4, 4, 20),
      rings: [...square(4, 4, 20).rings, ...square(8, 8, 12).rings],
      fillRule: 'evenodd',
    };
    const bar = rectangle({ x: 13, y: 0.5 }, { x: 14, y: 29 });
    const across = rectangle({ x: 0.5, y: 13 }, { x: 38, y: 14 });
    // The bar has four crossings with the frame's outer border, and four with the inner one; the other bar as well.
    expect(countOf(bar, frame, across)).toBe(4 + 4 + 4 + 4 + 4);
  });

  it.each<[string, Outline]>([
    ['twice by the even-odd rule', { ...laidTwice, fillRule: 'evenodd' }],
    [
      'twice one way and twice the other',
      { ...laidTwice, rings: [...laidTwice.rings, ...laidTwice.rings.map(turnedRound)] },
    ],
  ])('are those under a shape that is laid %s, and fills nothing', (_, veil) =>
    expect(countOf(upright(20), veil, level(30))).toBe(4 * 20 * 30),
  );

  it('are not those under a shape that is laid three times by the even-odd rule', () => {
    const rings = [...laidTwice.rings, ...veil.rings];
    expect(countOf(upright(20), { ...veil, rings, fillRule: 'evenodd' }, level(30))).toBe(0);
  });

  it('are as many as there are, for shapes that hide nothing of each other', () => {
    // Places as none lies on a border of cells, and hardly three of them on one line.
    const step = fc.noBias(fc.nat(99_999));
    const place = fc.tuple(step, step).map(([x, y]): Place => [1.0137 + x * 3.779e-4, 1.0171 + y * 2.773e-4]);
    const sliver = fc
      .tuple(place, place)
      .filter(([[ax, ay], [bx, by]]) => Math.hypot(ax - bx, ay - by) > 1)
      .map(([from, to]) => shape(from, to, [(from[0] + to[0]) / 2 + 1e-4, (from[1] + to[1]) / 2 + 1e-4]));
    fc.assert(
      fc.property(fc.array(sliver, { minLength: 2, maxLength: 12 }), (slivers) => {
        const pairs = slivers.flatMap((one, at) =>
          slivers.slice(0, at).map((other) => [one, other] as const),
        );
        const met = pairs.reduce((sum, [one, other]) => sum + meetings(one, other), 0);
        expect(countOf(...slivers)).toBe(met);
      }),
    );
  });
});

describe('more crossings than may be', () => {
  it('are not laid, and the others are counted as if it had not been', () => {
    const count = new CrossingCount(CANVAS, 4 * 20 * 20, 10_000);
    expect(count.lay(upright(20))).toBe(true);
    expect(count.lay(level(21))).toBe(false);
    expect(count.crossings).toBe(0);
    expect(count.lay(level(20))).toBe(true);
    expect(count.crossings).toBe(1_600);
    expect(count.lay(square(1.5, 1.5, 9))).toBe(false);
    expect(count.lay(square(32, 1.5, 4))).toBe(true);
  });

  it('are given up as soon as they are met', () => {
    const count = new CrossingCount(CANVAS, 1_000, 1_000_000);
    count.lay(upright(100));
    for (let time = 1; time <= 20; time++) {
      expect(count.lay(level(400))).toBe(false);
      // Some pairs lie beside each other only, and each pair that was looked at in vain counts eleven times.
      expect(count.pairs).toBeLessThan(time * 11 * 3_000);
    }
  });

  it('are taken for granted where edges lie too densely to be looked at', () => {
    const diagonals = (shift: number) =>
      shape(
        ...Array.from({ length: 1_500 }, (_, i): Place =>
          i % 2 === 0 ? [1 + i * 1e-6 + shift, 1] : [29 + i * 1e-6 + shift, 29],
        ),
      );
    const count = new CrossingCount(CANVAS, 1e9, 100_000);
    expect(count.lay(diagonals(0))).toBe(true);
    expect(count.lay(diagonals(2e-3))).toBe(false);
  });
});

function meetings(one: Outline, other: Outline): number {
  return edgesOf(one).reduce((sum, a) => sum + edgesOf(other).filter((b) => meet(a, b)).length, 0);
}

type Edge = readonly [Place, Place];

function edgesOf({ rings: [ring] }: Outline): readonly Edge[] {
  const places = (ring ? ringPoints(ring) : []).map(({ x, y }): Place => [x, y]);
  return places.map((place, at) => [place, places[(at + 1) % places.length] ?? place]);
}

function meet([a, b]: Edge, [c, d]: Edge): boolean {
  const side = (p: Place, q: Place, r: Place) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]) >= 0;
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}
