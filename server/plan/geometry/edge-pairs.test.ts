import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CrossingCount } from './crossing-count.js';
import { type EdgePairs, edgePairs } from './edge-pairs.js';
import { type Outline, polygon } from './outline.js';

const CANVAS = { width: 40, height: 30 };
const MOST = 1e6;

const place = fc.record({
  x: fc.double({ min: -5, max: 45, noNaN: true }),
  y: fc.double({ min: -5, max: 35, noNaN: true }),
});
const outline = fc.array(place, { minLength: 3, maxLength: 9 }).map((corners) => polygon(corners));
const outlines = fc.array(outline, { minLength: 1, maxLength: 12 });

const figuresOf = (pairs: EdgePairs | undefined) =>
  pairs && { pairs: pairs.pairs, entries: pairs.entries, passed: [...pairs.passed] };

function crossingsOf(all: readonly Outline[]): number {
  const count = new CrossingCount(CANVAS, MOST, 1_000);
  for (const each of all) count.lay(each);
  return count.crossings;
}

describe('pairs of edges in the cells of a canvas', () => {
  it('are no fewer than crossings', () => {
    fc.assert(
      fc.property(outlines, (all) => {
        expect(edgePairs(CANVAS, all, MOST)?.pairs).toBeGreaterThanOrEqual(crossingsOf(all));
      }),
      { numRuns: 60 },
    );
  });

  it('are the same whether all are looked at or what has changed', () => {
    const change = fc.tuple(fc.nat({ max: 11 }), outline);
    fc.assert(
      fc.property(outlines, fc.array(change, { minLength: 1, maxLength: 5 }), (first, changes) => {
        let all: readonly Outline[] = first;
        let last = edgePairs(CANVAS, all, MOST);
        for (const [which, other] of changes) {
          all = all.with(which % all.length, other);
          last = edgePairs(CANVAS, all, MOST, last);
          expect(figuresOf(last)).toEqual(figuresOf(edgePairs(CANVAS, all, MOST)));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('are told of another canvas or another number of outlines afresh', () => {
    const square = polygon([
      { x: 1, y: 1 },
      { x: 9, y: 1 },
      { x: 9, y: 9 },
    ]);
    const other = polygon([
      { x: 2, y: 2 },
      { x: 9, y: 1 },
      { x: 9, y: 8 },
    ]);
    const last = edgePairs(CANVAS, [square, other], MOST);
    const wide = { width: 80, height: 30 };
    expect(figuresOf(edgePairs(wide, [square, other], MOST, last))).toEqual(
      figuresOf(edgePairs(wide, [square, other], MOST)),
    );
    expect(edgePairs(CANVAS, [square], MOST, last)?.pairs).toBe(0);
  });

  it('are not told beyond the most that may be', () => {
    const triangle = polygon([
      { x: 1, y: 1 },
      { x: 39, y: 1 },
      { x: 20, y: 29 },
    ]);
    const turned = polygon([
      { x: 1, y: 29 },
      { x: 39, y: 29 },
      { x: 20, y: 1 },
    ]);
    const pairs = edgePairs(CANVAS, [triangle, turned], MOST)?.pairs ?? 0;
    expect(pairs).toBeGreaterThan(0);
    expect(edgePairs(CANVAS, [triangle, turned], pairs)?.pairs).toBe(pairs);
    expect(edgePairs(CANVAS, [triangle, turned], pairs - 1)).toBeUndefined();
  });
});
