import { describe, expect, it } from 'vitest';
import type { Ring } from '../../plan/geometry/outline.js';
import { signedArea } from '../../plan/geometry/path.js';
import { ringsApart } from './apart.js';
import { ringPieces } from './ring-pieces.js';

function ring(...corners: readonly (readonly [number, number])[]): Ring {
  return Float64Array.from(corners.flat());
}

/** Areas of the parts that hang together, largest first. */
function parts(...rings: readonly Ring[]): readonly number[] {
  return ringPieces(rings).map(({ area }) => Number(area.toFixed(9)));
}

/** Clockwise on the canvas, as outer rings run; a hole runs the other way. */
const SQUARE = ring([0, 0], [10, 0], [10, 10], [0, 10]);
const hole = (...corners: readonly (readonly [number, number])[]) => ring(...corners.toReversed());

describe('rings taken apart', () => {
  it('are the same ones where they touch nowhere', () => {
    const rings = [SQUARE, hole([2, 2], [4, 2], [4, 4])];
    expect(ringsApart(rings)).toBe(rings);
  });

  it('are two parts of a ring that comes back to one of its corners', () => {
    expect(parts(ring([0, 0], [5, 5], [10, 0], [10, 10], [5, 5], [0, 10]))).toEqual([25, 25]);
  });

  it('are two parts of a ring of which a corner lies on a side', () => {
    // From below a tip reaches up to the upper side.
    expect(parts(ring([0, 0], [10, 0], [10, 10], [7, 10], [4, 0], [3, 10], [0, 10]))).toEqual([45, 35]);
  });

  it('are two parts where a hole reaches from side to side', () => {
    expect(parts(SQUARE, hole([0, 4], [5, 3], [10, 4], [5, 6]))).toEqual([50, 35]);
  });

  it('are one part where a hole touches a side once', () => {
    expect(parts(SQUARE, hole([0, 4], [5, 3], [5, 6]))).toEqual([92.5]);
  });

  it('have no border where a hole lies along a side', () => {
    const [only, ...others] = ringsApart([SQUARE, hole([0, 2], [3, 2], [3, 8], [0, 8])]);
    expect(others).toEqual([]);
    expect(signedArea(only ?? SQUARE)).toBeCloseTo(82, 9);
    const around = Array.from({ length: (only?.length ?? 0) / 2 }, (_, corner) => [
      only?.[2 * corner],
      only?.[2 * corner + 1],
    ]);
    expect(around).toHaveLength(8);
    expect(around).toEqual(
      expect.arrayContaining([
        [0, 2],
        [3, 2],
        [3, 8],
        [0, 8],
      ]),
    );
  });

  it('are one part of two rings that lie side on side', () => {
    expect(parts(SQUARE, ring([10, 2], [14, 2], [14, 6], [10, 6]))).toEqual([116]);
  });

  it('are the same whichever way they run', () => {
    const turned = [SQUARE, hole([0, 4], [5, 3], [10, 4], [5, 6])].map((each) =>
      Float64Array.from(each.map((_, at) => each[each.length - 2 - at + 2 * (at % 2)] as number)),
    );
    expect(parts(...turned)).toEqual([50, 35]);
  });
});
