import { describe, expect, it } from 'vitest';
import type { SketchPlace } from '../../../server/drawing/scene.js';
import { type Pixels, squareUp, squaringOf } from './sketch-squaring.js';

const at = (x: number, y: number): SketchPlace => ({
  across: { value: x, in: 'parts' },
  down: { value: y, in: 'pixels' },
});
const size = { width: 400, height: 300 };

/** A sheet that is paper on its left half and ink on its right, `across` of its width in pixels. */
function halves({ width, height }: { readonly width: number; readonly height: number }): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let index = 0; index < width * height; index++) {
    const grey = index % width < width / 2 ? 240 : 20;
    data.set([grey, grey, grey, 255], 4 * index);
  }
  return { data, width, height };
}

function squared(corners: readonly SketchPlace[], across: number) {
  const answer = squaringOf(size, corners, across);
  if (!answer.ok) throw new Error(answer.reason);
  return answer;
}

describe('how a sketch is squared up', () => {
  it('is taken whole where no corners are given', () => {
    const { part, reduced, out } = squared([], 4 / 3);
    expect(part).toEqual({ x: 0, y: 0, width: 400, height: 300 });
    expect(reduced).toEqual(size);
    expect(out).toEqual(size);
  });

  it('takes only the part that the corners go round, in pixels or parts', () => {
    const { part, out } = squared([at(0.25, 30), at(0.75, 60), at(0.7, 270), at(0.3, 240)], 0.5);
    expect(part).toEqual({ x: 100, y: 30, width: 200, height: 240 });
    expect(out.width / out.height).toBeCloseTo(0.5, 1);
  });

  it('never makes more than 2,000 pixels a side, and holds no more than twice that', () => {
    for (const across of [0.1, 1, 7]) {
      const answer = squaringOf({ width: 16_000, height: 4_000 }, [], across);
      if (!answer.ok) throw new Error(answer.reason);
      expect(Math.max(answer.out.width, answer.out.height)).toBe(2_000);
      expect(Math.max(answer.reduced.width, answer.reduced.height)).toBeLessThanOrEqual(4_000);
    }
  });

  it.each([
    ['three corners', [at(0, 0), at(1, 0), at(1, 300)], '`corners` gives 3.'],
    ['corners in a bow tie', [at(0, 0), at(1, 300), at(1, 0), at(0, 300)], 'do not go round a sheet'],
    ['a corner far off', [at(0, 0), at(9, 0), at(1, 300), at(0, 300)], 'which is 400 × 300 pixels'],
    ['corners beside it', [at(1.1, 0), at(1.4, 0), at(1.4, 300), at(1.1, 300)], 'beside the sketch'],
  ])('refuses %s in words', (_what, corners, words) => {
    expect(squaringOf(size, corners, 1)).toEqual({ ok: false, reason: expect.stringContaining(words) });
  });
});

describe('a sketch that is squared up', () => {
  const grey = (made: Uint8ClampedArray, width: number, x: number, y: number) => made[4 * (y * width + x)];

  it('is the sketch itself where its corners are those of the canvas', () => {
    const { map, out } = squared([], 4 / 3);
    const sheet = halves(size);
    expect(Buffer.from(squareUp(sheet, map, out)).equals(Buffer.from(sheet.data))).toBe(true);
  });

  it('has straight what was slanted', () => {
    // A canvas that leans to the right in the sketch: its left edge runs along the border of paper and ink.
    const leaning = halves({ width: 400, height: 300 });
    for (let y = 0; y < 300; y++) {
      for (let x = 0; x < 400; x++)
        leaning.data.fill(x < 200 - y / 3 ? 240 : 20, 4 * (y * 400 + x), 4 * (y * 400 + x) + 3);
    }
    const { map, out, part } = squared([at(0.25, 0), at(0.75, 0), at(0.5, 300), at(0, 300)], 2 / 3);
    expect(part).toMatchObject({ x: 0, width: 300 });
    const made = squareUp({ ...leaning, width: 400 }, map, out);
    for (const y of [5, Math.floor(out.height / 2), out.height - 5]) {
      expect(grey(made, out.width, Math.floor(0.45 * out.width), y)).toBe(240);
      expect(grey(made, out.width, Math.ceil(0.55 * out.width), y)).toBe(20);
    }
  });

  it('is clear where the canvas reaches over the edge of the sketch', () => {
    const { map, out } = squared([at(-0.25, 0), at(0.75, 0), at(0.75, 300), at(-0.25, 300)], 4 / 3);
    const made = squareUp(halves({ width: 300, height: 300 }), map, out);
    const middle = Math.floor(out.height / 2);
    expect(made[4 * (middle * out.width + 10) + 3]).toBe(0);
    expect(made[4 * (middle * out.width + Math.floor(out.width / 2)) + 3]).toBe(255);
  });

  it('mixes evenly between two pixels', () => {
    const pair: Pixels = { width: 2, height: 1, data: Uint8ClampedArray.of(0, 0, 0, 255, 200, 100, 50, 255) };
    const answer = squaringOf(pair, [], 2);
    if (!answer.ok) throw new Error(answer.reason);
    const made = squareUp(pair, answer.map, { width: 4, height: 1 });
    expect([...made].filter((_, index) => index % 4 === 0)).toEqual([0, 50, 150, 200]);
  });
});
