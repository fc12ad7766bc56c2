import { describe, expect, it } from 'vitest';
import { parse, type SyntaxTree } from '../../grammar/index.js';
import { marketPlan } from '../../tests/support/market.js';
import { planOf } from '../../tests/support/plan.js';
import { OutlineCache } from '../plan/outline-cache.js';
import { resolvePlan } from '../plan/resolve.js';
import { type WorkCounter, visibleAreas } from './areas/areas.js';
import { measure } from './measure.js';
import { Memory } from './memory.js';

const SIZES = [100, 200, 400, 800, 1600];

/** What measuring a market of so many objects takes, counted. */
function workFor(count: number) {
  const plan = planOf(marketPlan(count));
  const counter: WorkCounter & { corners: number } = {
    clips: 0,
    differences: 0,
    intersections: 0,
    corners: 0,
  };
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  visibleAreas(plan.canvas, layers, counter);
  const { borders, tangents } = measure(plan);
  return {
    corners: counter.corners,
    differences: counter.differences,
    borders: borders.borders.length,
    stretches: borders.stretches.length,
    touches: tangents.touches.length,
  };
}

describe('with more objects, each over as many others', () => {
  it('the corners that are cut, the cuts and the borders grow no faster than n log n, within a half', () => {
    const works = SIZES.map(workFor);
    const first = works[0];
    if (!first) throw new Error('nothing measured');
    works.forEach((work, at) => {
      const count = SIZES[at] ?? 0;
      const growth = (1.5 * (count * Math.log(count))) / (100 * Math.log(100));
      for (const of of ['corners', 'differences', 'borders', 'stretches'] as const) {
        expect(first[of], of).toBeGreaterThan(0);
        expect(work[of] / first[of], `${of} of ${count}`).toBeLessThanOrEqual(growth);
      }
    });
  });
});

describe('over three hundred edits', () => {
  it('no more is kept than after the first ones', () => {
    const outlines = new OutlineCache();
    const memory = new Memory();
    const text = marketPlan(20);
    let tree: SyntaxTree | undefined;
    const keptAfter = (edit: number): readonly [number, number] => {
      const moved = text.replace(/(shape ellipse )([\d.]+)/u, (_, shape: string, size: string) => {
        return `${shape}${Number(size) + edit / 1000}`;
      });
      tree = parse(moved, tree);
      measure(resolvePlan(tree, { outlines }), memory);
      return [outlines.kept, memory.kept];
    };
    const first = [0, 1, 2].map(keptAfter).at(-1) ?? [0, 0];
    expect(first[0]).toBeGreaterThanOrEqual(20);
    for (let edit = 3; edit < 300; edit++) keptAfter(edit);
    const [keptOutlines, keptResults] = keptAfter(300);
    expect(keptOutlines).toBeLessThanOrEqual(first[0]);
    // What is seen may change by an object or two as it grows.
    expect(keptResults).toBeLessThanOrEqual(1.05 * first[1]);
  });
});
