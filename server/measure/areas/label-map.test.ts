import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { visibleAreas } from './areas.js';
import { OutlineCache } from '../../plan/outline-cache.js';
import { GROUND } from '../borders/borders.js';
import { type LabelMap, labelMap } from './label-map.js';
import { Memory } from '../memory.js';
import type { Plan } from '../../plan/plan.js';

const CANVAS = 'canvas  80 x 50 cm\nfocus   upper left';
const WALL = 'object  wall\n  shape   rectangle (0, 0) to (80, 30)\n  value   4';
const JUG = 'object  jug\n  shape   circle 20 at (40, 25)\n  value   2';

function mapOf(plan: Plan, memory = new Memory()): LabelMap {
  memory.turnOver();
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  return labelMap(plan, visibleAreas(plan.canvas, layers), memory);
}

function share({ labels }: LabelMap, area: number): number {
  const cells = labels.flatMap((row) => [...row]);
  return cells.filter((label) => label === area).length / cells.length;
}

describe('the map of who is seen where', () => {
  const map = mapOf(planOf(`${CANVAS}\n${WALL}\n${JUG}`));

  it('has 1,024 cells on the long side', () => {
    expect([map.columns, map.rows]).toEqual([1024, 640]);
    const upright = mapOf(planOf('canvas  30 x 40 cm\nfocus   upper left'));
    expect([upright.columns, upright.rows]).toEqual([768, 1024]);
  });

  it('tells at any place what is seen there', () => {
    expect(map.areaAt({ x: 40, y: 25 })).toBe(1);
    expect(map.areaAt({ x: 2, y: 29.9 })).toBe(0);
    expect(map.areaAt({ x: 80, y: 50 })).toBe(GROUND);
    expect(map.areaAt({ x: 80.1, y: 50 })).toBeUndefined();
  });

  it('agrees with the areas of the shapes', () => {
    const jug = (Math.PI * 100) / 4000;
    expect(share(map, 1)).toBeCloseTo(jug, 3);
    expect(share(map, 0) + share(map, 1) + share(map, GROUND)).toBe(1);
  });

  it('is mirrored with the picture, cell by cell', () => {
    const mirrored = mapOf(planOf(`${CANVAS}\n${WALL}\n${JUG.replace('(40, 25)', '(28.3, 25)')}`));
    const other = mapOf(planOf(`${CANVAS}\n${WALL}\n${JUG.replace('(40, 25)', '(51.7, 25)')}`));
    expect(mirrored.labels.map((row) => row.toReversed())).toEqual(other.labels);
  });

  it('leaves no cell without an area where borders run through the middles of cells', () => {
    const step = 80 / 2048;
    const text = `${CANVAS}\n${WALL}\nobject  jug\n  shape   rectangle (${step}, ${step}) to (${81 * step}, ${41 * step})\n  value   2`;
    const { labels } = mapOf(planOf(text));
    expect(labels.every((row) => row.every((label) => label >= GROUND))).toBe(true);
  });

  it('fills only what changed of one version to the next', () => {
    const memory = new Memory();
    const outlines = new OutlineCache();
    const version = (x: number) =>
      mapOf(
        planOf(`${CANVAS}\n${WALL}\n${JUG}\nobject  cup\n  shape   circle 4 at (${x}, 40)\n  value   2`, {
          outlines,
        }),
        memory,
      );
    const first = version(70);
    expect(memory.worked('label runs')).toBe(3);
    expect(version(70)).toBe(first);
    const moved = version(72);
    // Nothing but the cup: it stands on the bare ground.
    expect(memory.worked('label runs')).toBe(4);
    const changed = moved.labels.flatMap((row, index) => (row === first.labels[index] ? [] : [index]));
    expect(changed.length).toBeGreaterThan(0);
    const middles = changed.map((row) => ((row + 0.5) / moved.rows) * 50);
    expect(Math.max(...middles.map((y) => Math.abs(y - 40)))).toBeLessThanOrEqual(2);
  });

  it('fills only what changed also where all areas miss a cell by rounding, which is given to its neighbour', () => {
    const pear =
      'smooth (27.79, 0.77) (27.5, 1.49) (26.71, 1.72) (26.21, 1.11) (26.06, 0.35) (26.75, 0.03) (27.51, 0.03)';
    const kite = 'outline (27.68, 2.31) (26.92, 3.11) (25.98, 2.31) (26.92, 1.49)';
    const outlines = new OutlineCache();
    const version = (y: number, memory: Memory) => {
      const shapes = [pear, kite, `circle 4 at (70, ${y})`];
      const objects = shapes.map((shape, at) => `object  ${'abc'[at]}\n  shape   ${shape}\n  value   2`);
      return mapOf(planOf(['canvas  80 x 60 cm', ...objects].join('\n'), { outlines }), memory);
    };
    const memory = new Memory();
    const first = version(40, memory);
    expect(first.gaps).toEqual([23 * 1024 + 339]);
    const lower = version(41, memory);
    expect(lower.gaps).toEqual(first.gaps);
    expect(lower.labels.filter((row, index) => row !== first.labels[index]).length).toBeLessThan(100);
    for (const y of [41, 1, 3.6, 40]) {
      const moved = version(y, memory);
      const fresh = version(y, new Memory());
      expect(moved.gaps).toEqual(fresh.gaps);
      expect(moved.labels).toEqual(fresh.labels);
    }
  });
});
