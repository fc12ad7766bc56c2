import { encode as encodePng } from 'fast-png';
import { beforeAll, describe, expect, it } from 'vitest';
import { mozJpeg, painted, type Rgba } from '../../tests/photographs/made.js';
import { shownSide } from '../measure/photograph/photographs.js';
import { labDifference } from '../plan/colour/difference.js';
import { type Corners, fromUnitSquare } from '../plan/geometry/homography.js';
import type { PicturePlace } from '../plan/plan.js';
import { inverse } from './colour/matrix.js';
import { squarePhotograph } from './square.js';
import {
  whole,
  at,
  squared,
  refused,
  labAt,
  labOf,
  farthestField,
  upright,
} from '../../tests/photographs/squaring.js';

let jpeg: Uint8Array;
beforeAll(async () => {
  jpeg = await mozJpeg(upright);
});

describe('corners', () => {
  const corners: Corners = [
    { x: 300, y: 150 },
    { x: 1_050, y: 90 },
    { x: 1_130, y: 800 },
    { x: 240, y: 730 },
  ];
  const given = corners.map(({ x, y }) => at(x, y));
  /** The four fields on an easel, by a map of its own: the inverse of the one that is under test, sample by sample. */
  const photographed = (() => {
    const map = fromUnitSquare(corners);
    if (map === undefined) throw new Error('These are corners.');
    const { a, b, c, d, e, f, g, h, i } = map;
    const back = inverse([
      [a, b, c],
      [d, e, f],
      [g, h, i],
    ]);
    if (back === undefined) throw new Error('It can be turned round.');
    const [one, two, three] = back;
    return painted(1_280, 900, (x, y) => {
      const along = ([p, q, r]: readonly [number, number, number]) => p * (x + 0.5) + q * (y + 0.5) + r;
      const [u, v] = [along(one) / along(three), along(two) / along(three)];
      if (u < 0 || v < 0 || u > 1 || v > 1) return [12, 12, 12];
      const pixel = 4 * (Math.floor(v * 120) * 160 + Math.floor(u * 160));
      return [upright.data[pixel] ?? 0, upright.data[pixel + 1] ?? 0, upright.data[pixel + 2] ?? 0];
    });
  })();

  it('square up what leans, to the edges of the canvas', async () => {
    const picture = await squared(await mozJpeg(photographed), { corners: given });
    expect(farthestField(picture)).toBeLessThan(1);
    for (const [x, y, rgb] of [
      [0.01, 0.01, [200, 40, 30]],
      [0.99, 0.99, [128, 128, 128]],
    ] as const)
      expect(labDifference(labAt(picture, x, y), labOf(rgb))).toBeLessThan(3);
    // The fields meet in the middle, where the diagonals of the canvas cross.
    expect(labDifference(labAt(picture, 0.49, 0.25), labOf([200, 40, 30]))).toBeLessThan(2);
    expect(labDifference(labAt(picture, 0.51, 0.25), labOf([40, 150, 60]))).toBeLessThan(2);
    expect(picture.trust.sharpness).toBeGreaterThan(1.5);
  });

  it('may be parts of the sides', async () => {
    const parts = corners.map(({ x, y }): PicturePlace => ({
      across: { value: x / 1_280, in: 'parts' },
      down: { value: y / 900, in: 'parts' },
    }));
    expect(farthestField(await squared(await mozJpeg(photographed), { corners: parts }))).toBeLessThan(1);
  });

  const [p0, p1, p2, p3] = given as [PicturePlace, PicturePlace, PicturePlace, PicturePlace];
  it.each<readonly [string, readonly PicturePlace[], string]>([
    ['three', [p0, p1, p2], 'A canvas has four corners; `corners` gives 3.'],
    ['crossed', [p0, p2, p1, p3], 'do not go round a canvas'],
    ['the other way round', [p1, p0, p3, p2], 'go round the wrong way'],
    ['dented', [p0, p1, at(500, 300), p3], 'do not go round a canvas'],
    ['in one place', [p0, p0, p2, p3], 'only 0 pixels long'],
    ['tiny', [at(10, 10), at(30, 10), at(30, 30), at(10, 30)], 'only 20 pixels long'],
    ['nearly in a line', [at(10, 10), at(600, 8), at(1_200, 10), at(10, 800)], 'too much from the side'],
    [
      'far outside',
      [at(-400, 0), p1, p2, p3],
      'The upper left corner lies outside the photograph, which is 1280 × 900',
    ],
    ['nowhere', [at(NaN, 0), p1, p2, p3], 'lies outside'],
  ])('that are %s are refused', async (_, places, words) => {
    expect(await refused(await mozJpeg(photographed), { corners: places })).toContain(words);
  });

  it('may lie a little outside, where the edge goes on', async () => {
    const picture = await squared(jpeg, { corners: [at(-2, -2), at(162, -2), at(162, 122), at(-2, 122)] });
    expect(labDifference(labAt(picture, 0, 0), labOf([200, 40, 30]))).toBeLessThan(1);
  });
});

describe('resampling', () => {
  it.each([
    ['twice as wide as it is shown, and no beat of the stripes is left', 2 * shownSide, 0.5],
    ['of any other width, and hardly a beat of stripes as fine as its pixels', 3_050, 4],
  ])('averages in linear light where it is %s', async (_, width, most) => {
    const stripes = painted(width, 150, (x) => (x % 2 === 0 ? [255, 255, 255] : [0, 0, 0]));
    const picture = await squared(encodePng({ ...stripes, channels: 4 }), { proportion: 16 });
    // L* of Y = 0.5, not that of level 128: CIE 15:2004, equation 8.3.
    const half = 116 * Math.cbrt(0.5) - 16;
    for (const x of [0.1, 0.37, 0.5, 0.93])
      expect(Math.abs(labAt(picture, x, 0.5)[0] - half)).toBeLessThan(most);
    expect(picture.trust.burntShare).toBeCloseTo(0.5, 2);
    expect(picture.trust.blackShare).toBeCloseTo(0.5, 2);
  });

  it('gives the same for opaque photographs of 8 bits, which go a faster way, as for all others', async () => {
    const soft = painted(1_500, 300, (x, y) => [(x / 6) & 255, (y / 5) & 255, (x * y) & 255]);
    const corners = [at(30, 20), at(1_450, 30), at(1_400, 280), at(60, 250)];
    const [fast, slow] = [3, 4].map((channels) => {
      const data = channels === 4 ? soft.data : soft.data.filter((_, index) => index % 4 !== 3);
      return encodePng({ width: 1_500, height: 300, data, channels });
    });
    const [one, other] = [
      await squared(fast ?? jpeg, { corners, proportion: 5 }),
      await squared(slow ?? jpeg, { corners, proportion: 5 }),
    ];
    const differences = one.lab.map((level, index) => Math.abs(level - (other.lab[index] ?? 0)));
    expect(differences.reduce((sum, each) => sum + each, 0) / differences.length).toBeLessThan(0.1);
    expect(one.trust.burntShare).toBeCloseTo(other.trust.burntShare, 3);
  });
});

describe('the grey patch', () => {
  /** A warm light on everything, and a card in the lower left. */
  const warm = (level: number) =>
    painted(320, 240, (x, y) => {
      const isCard = x < 60 && y > 180;
      const [r, g, b] = isCard ? [level, level, level] : [100, 140, 90];
      return [Math.min(255, r * 1.15), g, b * 0.8];
    });

  it('takes the tint out of the light, and keeps how light it is', async () => {
    const bytes = await mozJpeg(warm(128));
    const [before, after] = [await squared(bytes), await squared(bytes, { grey: at(30, 210) })];
    const [lightness, a, b] = labAt(after, 0.08, 0.88);
    expect(Math.hypot(a, b)).toBeLessThan(1);
    expect(lightness).toBeCloseTo(labAt(before, 0.08, 0.88)[0], 0);
    expect(after.trust.grey?.fault).toBeUndefined();
    expect(after.trust.grey?.cast).toBeGreaterThan(1.8);
    expect(labDifference(labAt(after, 0.7, 0.3), labOf([100, 140, 90]))).toBeLessThan(
      labDifference(labAt(before, 0.7, 0.3), labOf([100, 140, 90])),
    );
  });

  it.each<readonly [string, Rgba, PicturePlace, string]>([
    ['burnt out', warm(250), at(30, 210), 'burnt out'],
    ['too dark', warm(14), at(30, 210), 'too dark'],
    ['no grey at all', painted(320, 240, () => [220, 60, 40]), at(30, 210), 'too strong a colour'],
    ['outside', warm(128), at(900, 900), 'outside the photograph'],
  ])('that is %s is told, and the photograph left as it is', async (_, picture, grey, words) => {
    const bytes = await mozJpeg(picture);
    const [before, after] = [await squared(bytes), await squared(bytes, { grey })];
    expect(after.trust.grey?.fault).toContain(words);
    expect(Buffer.compare(Buffer.from(after.lab.buffer), Buffer.from(before.lab.buffer))).toBe(0);
  });
});

it('says how far it is, and stops when it is told to', async () => {
  const parts: number[] = [];
  await squarePhotograph(jpeg, whole, { progress: (part) => parts.push(part) });
  expect(parts.length).toBeGreaterThan(1);
  expect(parts).toEqual([...parts].sort((one, other) => one - other));
  const answer = await squarePhotograph(jpeg, whole, { signal: AbortSignal.abort() });
  expect(answer).toEqual({ ok: false, reason: 'Measuring was stopped.' });
});
