import { describe, expect, it } from 'vitest';
import { isTangled, MOST_CROSSINGS } from './tangle.js';

function ring(count: number, at: (index: number) => readonly [number, number]): Float64Array {
  return Float64Array.from(Array.from({ length: count }, (_, index) => at(index)).flat());
}

/** `count` upright strokes, each over the whole height, without a crossing. */
const comb = (count: number) => ring(count, (index) => [index / count, index % 4 < 2 ? 0 : 1]);

/** Every edge of a star with an odd number of points and half as long steps crosses nearly every other. */
const star = (points: number) =>
  ring(points, (index) => {
    const angle = (2 * Math.PI * index * ((points - 1) / 2)) / points;
    return [Math.cos(angle), Math.sin(angle)];
  });

describe('outlines that can be cut', () => {
  it.each([
    ['nothing', []],
    ['a star of 101 points', [star(101)]],
    ['a comb of 200,000 points', [comb(200_000)]],
    ['a circle of 200,000 points', [ring(200_000, (i) => [Math.cos(i / 31_831), Math.sin(i / 31_831)])]],
    ['a star just below the limit', [star(707)]],
  ])('%s', (_, rings) => expect(isTangled(rings)).toBe(false));
});

describe('tangles', () => {
  it('are outlines with too many crossings: a star of n points has n (n - 3) / 2', () => {
    expect((709 * (709 - 3)) / 2).toBeGreaterThan(MOST_CROSSINGS);
    expect(isTangled([star(709)])).toBe(true);
  });

  it('may lie between two outlines', () => {
    const level = ring(1_200, (i) => [i % 4 < 2 ? 0 : 1, i / 1_200]);
    expect(isTangled([comb(1_200), level])).toBe(true);
  });

  it('are outlines whose edges all lie beside each other, crossed or not', () => {
    const hatching = ring(20_000, (i) => [(i % 2) + i / 20_000, (i % 2) - i / 20_000]);
    expect(isTangled([hatching])).toBe(true);
  });
});
