import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { columnName, placeInSquare, squareName, transferGridOf } from './grid.js';

function gridOf(...lines: readonly string[]) {
  return transferGridOf(planOf(lines.join('\n')));
}

describe('the transfer grid', () => {
  it('divides the canvas into as many squares as are stated', () => {
    const grid = gridOf('canvas 60 x 40 cm', 'grid 6 x 4');
    expect(grid.uprights).toEqual([0, 10, 20, 30, 40, 50, 60]);
    expect(grid.levels).toEqual([0, 10, 20, 30, 40]);
    expect(grid).toMatchObject({ isStated: true, square: { width: 10, height: 10 }, line: 'grid 6 x 4' });
  });

  it('leaves the last column and row narrower where a spacing does not come out even', () => {
    const grid = gridOf('canvas 64 x 45 cm', 'grid every 10 cm');
    expect(grid.uprights).toEqual([0, 10, 20, 30, 40, 50, 60, 64]);
    expect(grid.levels).toEqual([0, 10, 20, 30, 40, 45]);
    expect([grid.lastColumn, grid.lastRow]).toEqual([4, 5]);
  });

  it('has no sliver where a spacing comes out even but for rounding', () => {
    const grid = gridOf('canvas 0.9 x 0.3 m', 'grid every 10 cm');
    expect([grid.uprights.length, grid.levels.length]).toEqual([10, 4]);
    expect([grid.lastColumn, grid.lastRow]).toEqual([undefined, undefined]);
    expect(grid.uprights.at(-1)).toBe(0.9);
  });

  it('takes a spacing in another unit than the canvas', () => {
    const grid = gridOf('canvas 16 x 20 in', 'grid every 5.08 cm');
    expect(grid.uprights.map((each) => Number(each.toFixed(6)))).toEqual([0, 2, 4, 6, 8, 10, 12, 14, 16]);
  });

  it.each([
    ['60 x 40 cm', 'grid every 10 cm', [7, 5]],
    ['16 x 20 in', 'grid every 4 in', [5, 6]],
    ['300 x 180 mm', 'grid every 20 mm', [16, 10]],
    ['2.4 x 1.5 m', 'grid every 20 cm', [13, 9]],
    ['3 x 2 mm', 'grid every 0.5 mm', [7, 5]],
  ] as const)('of a canvas of %s that states none is %s, which can be written', (canvas, line, counts) => {
    const usual = gridOf(`canvas ${canvas}`);
    expect([usual.isStated, usual.line]).toEqual([false, line]);
    expect([usual.uprights.length, usual.levels.length]).toEqual(counts);
    const written = gridOf(`canvas ${canvas}`, line);
    expect(written.uprights.length).toBe(usual.uprights.length);
  });

  it('keeps to 200 squares each way, also on a long band', () => {
    expect(gridOf('canvas 90 m x 1 cm').uprights.length).toBeLessThanOrEqual(201);
  });

  it('letters the columns as far as they go', () => {
    expect([0, 25, 26, 51, 52, 199].map(columnName)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'GR']);
    expect(new Set(Array.from({ length: 200 }, (_, column) => squareName(column, 0))).size).toBe(200);
  });

  it('tells a place by its square, so that it can be found again', () => {
    const grid = gridOf('canvas 64 x 45 cm', 'grid every 10 cm');
    expect(placeInSquare(grid, { x: 22.5, y: 21 })).toEqual({ name: 'C3', fromLeft: 2.5, fromTop: 1 });
    expect(placeInSquare(grid, { x: 20, y: 40 }).name).toBe('C5');
    expect(placeInSquare(grid, { x: 64, y: 45 })).toEqual({ name: 'G5', fromLeft: 4, fromTop: 5 });
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 64, noNaN: true }),
        fc.double({ min: 0, max: 45, noNaN: true }),
        (x, y) => {
          const { name, fromLeft, fromTop } = placeInSquare(grid, { x, y });
          const [, letter = '', row = ''] = /^([A-Z]+)(\d+)$/u.exec(name) ?? [];
          const column = letter.charCodeAt(0) - 65;
          expect((grid.uprights[column] ?? NaN) + fromLeft).toBeCloseTo(x, 9);
          expect((grid.levels[Number(row) - 1] ?? NaN) + fromTop).toBeCloseTo(y, 9);
          expect(fromLeft).toBeGreaterThanOrEqual(-1e-6);
          expect(fromLeft).toBeLessThanOrEqual(10 + 1e-6);
        },
      ),
    );
  });
});
