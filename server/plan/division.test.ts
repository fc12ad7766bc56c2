import { describe, expect, it } from 'vitest';
import { crossingByNumber, divide, PHI } from './division.js';

const LANDSCAPE = { width: 80, height: 50 };

function crossingsOf(...call: Parameters<typeof divide>): Record<string, readonly [number, number]> {
  return Object.fromEntries(divide(...call).crossings.map(({ name, at }) => [name, [at.x, at.y]]));
}

describe('golden section', () => {
  it('cuts each side in extreme and mean ratio', () => {
    // Euclid, Elements VI, definition 3: the whole is to the greater part as the greater is to the less.
    const greater = crossingsOf(LANDSCAPE, 'golden')['upper right']?.[0] ?? 0;
    const less = LANDSCAPE.width - greater;
    expect(LANDSCAPE.width / greater).toBeCloseTo(greater / less, 12);
  });

  it('keeps the ratio of neighbours in Hambidge’s series', () => {
    // J. Hambidge, The Elements of Dynamic Symmetry: each term is the sum of the two before it.
    const series = [118, 191, 309, 500, 809, 1309, 2118, 3427, 5545, 8972, 14517];
    for (const [index, term] of series.entries()) {
      const next = series[index + 1];
      if (next === undefined) break;
      expect(next / term).toBeCloseTo(PHI, 2);
    }
    expect(crossingsOf({ width: 1309, height: 809 }, 'golden')['lower right']?.[0]).toBeCloseTo(809, 0);
    expect(crossingsOf({ width: 1309, height: 809 }, 'golden')['lower right']?.[1]).toBeCloseTo(500, 0);
  });

  it('lies at 62 % of each side, as it is measured in the studio', () => {
    // Common practice, no source.
    const [x, y] = crossingsOf(LANDSCAPE, 'golden')['lower right'] ?? [0, 0];
    expect(Math.round((x / 80) * 100)).toBe(62);
    expect(Math.round((y / 50) * 100)).toBe(62);
  });
});

// Common practice, no source.
describe('thirds, two to three and quarters', () => {
  it('names four crossings where two lines stand each way', () => {
    expect(crossingsOf({ width: 90, height: 60 }, 'thirds')).toEqual({
      'upper left': [30, 20],
      'lower left': [30, 40],
      'upper right': [60, 20],
      'lower right': [60, 40],
    });
    expect(crossingsOf({ width: 100, height: 50 }, 'two to three')['upper right']).toEqual([60, 20]);
  });

  it('names nine crossings of the quarters', () => {
    const crossings = crossingsOf({ width: 40, height: 20 }, 'quarters');
    expect(Object.keys(crossings)).toHaveLength(9);
    expect(crossings['centre']).toEqual([20, 10]);
    expect(crossings['middle left']).toEqual([10, 10]);
    expect(crossings['upper centre']).toEqual([20, 5]);
  });
});

// Common practice, no source.
describe('rabatment', () => {
  it('lays the short side along the long one from each end', () => {
    const { lines } = divide(LANDSCAPE, 'rabatment');
    expect(lines.map(({ from }) => from.x)).toEqual([30, 50]);
    expect(lines.every(({ from, to }) => from.x === to.x && from.y === 0 && to.y === 50)).toBe(true);
  });

  it('stands its lines level on an upright canvas', () => {
    expect(divide({ width: 50, height: 80 }, 'rabatment').lines.map(({ from }) => from.y)).toEqual([30, 50]);
  });

  it('crosses its lines with the diagonals', () => {
    const crossings = crossingsOf(LANDSCAPE, 'rabatment');
    expect(crossings['lower right']).toEqual([50, 31.25]);
    expect(crossings['upper right']).toEqual([50, 18.75]);
    expect(crossings['upper left']).toEqual([30, 18.75]);
    expect(crossings['lower left']).toEqual([30, 31.25]);
  });

  it('gives nothing on a square', () => {
    expect(divide({ width: 50, height: 50 }, 'rabatment')).toEqual({ lines: [], crossings: [] });
  });

  it('gives one line and one crossing on two squares side by side', () => {
    expect(crossingsOf({ width: 60, height: 30 }, 'rabatment')).toEqual({ centre: [30, 15] });
  });
});

describe('own lines', () => {
  it('names crossings by where they lie', () => {
    const own = { uprights: [8], levels: [30] };
    expect(Object.keys(crossingsOf(LANDSCAPE, 'own', own))).toEqual(['lower left']);
  });

  it('names them by order where place does not tell them apart', () => {
    const own = { uprights: [8, 20], levels: [10, 40] };
    expect(crossingsOf(LANDSCAPE, 'own', own)['upper right']).toEqual([20, 10]);
  });

  it('counts them where there are many', () => {
    const own = { uprights: [10, 20, 30, 40], levels: [25] };
    const { crossings } = divide(LANDSCAPE, 'own', own);
    expect(crossings.map(({ name }) => name)).toEqual([
      'crossing 1 1',
      'crossing 2 1',
      'crossing 3 1',
      'crossing 4 1',
    ]);
    expect(crossingByNumber(crossings, 3, 1)?.at).toEqual({ x: 30, y: 25 });
    expect(crossingByNumber(crossings, 5, 1)).toBeUndefined();
  });
});
