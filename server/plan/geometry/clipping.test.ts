import { describe, expect, it } from 'vitest';
import { type Polygons, areaOnGrid, difference, intersection, united } from './clipping.js';

function ring(step: number, ...numbers: readonly number[]): Polygons[number] {
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: Math.round((numbers[2 * i] ?? NaN) * step),
    y: Math.round((numbers[2 * i + 1] ?? NaN) * step),
  }));
}

const SQUARE = ring(1000, 0, 0, 4, 0, 4, 4, 0, 4);
const RIGHT_HALF = ring(1000, 2, 0, 6, 0, 6, 4, 2, 4);
/** Level sides in a row that turn back on themselves, on which clipper2-ts 2.0.1 never ends; 36 by 50 over 2. */
const TURNING_BACK = ring(1000, 64, 0, 3, 0, 0, 0, 100, 0, 50, 50);

describe('cutting', () => {
  it.each([false, true])('gives areas with outer rings positive (careful: %s)', (careful) => {
    expect(areaOnGrid(difference([SQUARE], [RIGHT_HALF], careful))).toBe(8e6);
    expect(areaOnGrid(intersection([SQUARE], [RIGHT_HALF], careful))).toBe(8e6);
    expect(areaOnGrid(united([SQUARE, RIGHT_HALF]))).toBe(24e6);
    expect(areaOnGrid(difference([SQUARE], [], careful))).toBe(16e6);
    expect(difference([], [SQUARE], careful)).toEqual([]);
  });

  it.each([false, true])('ends on level sides that turn back (careful: %s)', (careful) => {
    const ground = ring(1000, 0, 0, 100, 0, 100, 50, 0, 50);
    expect(areaOnGrid(united([TURNING_BACK]))).toBe(900e6);
    expect(areaOnGrid(intersection([ground], [TURNING_BACK], careful))).toBe(900e6);
    expect(areaOnGrid(difference([ground], [TURNING_BACK], careful))).toBe(4100e6);
  });

  it.each([
    ['across the seam of the ring', ring(1000, 3, 0, 4, 0, 4, 4, 0, 4, 0, 0, 9, 0), 16e6],
    ['and nothing else', ring(1000, 0, 0, 5, 0, 2, 0, 9, 0), 0],
    ['in one point', ring(1000, 1, 1, 1, 1, 1, 1), 0],
    ['twice over', ring(1000, 0, 0, 4, 0, 2, 0, 4, 0, 4, 4, 0, 4, 3, 4, 0, 4), 16e6],
  ])('passes over level sides %s', (_, path, area) => {
    expect(areaOnGrid(united([path]))).toBe(area);
  });
});

describe('scribbles in which many sides meet in one point', () => {
  /** The grid that a region of 5 units has. */
  const STEP = 2 ** 36 / 5;
  const first = ring(
    STEP,
    ...[3, 1, 4, 3, 1, 4, 4, 4, 1, 1, 0, 1, 4, 0, 2, 3, 0, 0, 2, 3, 4, 2, 2, 0, 2, 2, 4, 0, 0, 2, 4, 1, 3, 4],
  );
  const second = ring(
    STEP,
    ...[1, 1, 1, 4, 0, 2, 3, 3, 3, 0, 3, 2, 0, 1, 0, 1, 2, 2, 3, 3, 3, 0, 3, 1, 3, 1, 2, 1, 3, 1, 4, 1],
    ...[4, 1, 0, 4, 0, 1],
  );

  // Asked only once, clipper2-ts 2.0.1 gives 5.398 and 3.334.
  it.each([
    [first, undefined],
    [second, 'evenodd' as const],
  ])('are united as they are slice by slice', (path, fillRule) => {
    const inside = (winding: number) => (fillRule === 'evenodd' ? winding % 2 !== 0 : winding !== 0);
    expect(areaOnGrid(united([path], fillRule)) / STEP ** 2).toBeCloseTo(slices(path, inside) / STEP ** 2, 3);
  });

  /** Area by 2,000 level slices of a ring from 0 to 4 units down, the length of each found exactly. */
  function slices(path: Polygons[number], inside: (winding: number) => boolean): number {
    const height = (4 * STEP) / 2000;
    let area = 0;
    for (let y = height / 2; y < 4 * STEP; y += height) {
      const crossings = path.flatMap((a, i) => {
        const b = path[(i + 1) % path.length] ?? a;
        if (a.y < y === b.y < y) return [];
        return [{ x: a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x), step: a.y < b.y ? 1 : -1 }];
      });
      crossings.sort((a, b) => a.x - b.x);
      let winding = 0;
      crossings.forEach(({ x, step }, i) => {
        winding += step;
        if (inside(winding)) area += ((crossings[i + 1]?.x ?? x) - x) * height;
      });
    }
    return area;
  }
});
