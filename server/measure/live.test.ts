import { describe, expect, it, vi } from 'vitest';
import { parse, type SyntaxTree } from '../../grammar/index.js';
import { marketPlan } from '../../tests/support/market.js';
import * as hue from '../plan/colour/hue.js';
import * as munsell from '../plan/colour/munsell.js';
import type { Outline } from '../plan/geometry/outline.js';
import { OutlineCache } from '../plan/outline-cache.js';
import { resolvePlan } from '../plan/resolve.js';
import type { LayerAreas } from './areas/areas.js';
import { measure } from './measure.js';
import { Memory } from './memory.js';
import * as relation from './tangency/relation.js';

/** What an edit has to work out, in a plan of a hundred objects that was measured before. */
function workOf(edit: (text: string) => string) {
  const outlines = new OutlineCache();
  const memory = new Memory();
  let tree: SyntaxTree | undefined;
  const run = (text: string) => {
    tree = parse(text, tree);
    const plan = resolvePlan(tree, { outlines });
    return { plan, ...measure(plan, memory) };
  };
  const text = marketPlan(100);
  const judge = vi.spyOn(relation, 'relationOf');
  const before = run(text);
  const pairsAtFirst = judge.mock.calls.length;
  judge.mockClear();
  const edited = edit(text);
  expect(edited).not.toBe(text);
  const counts = () => ({
    outlines: outlines.built,
    sides: memory.worked('sides'),
    runs: memory.worked('label runs'),
    meetings: memory.worked('meetings'),
    borders: memory.worked('borders'),
    tones: memory.worked('notan'),
    areas: memory.worked('areas'),
    tangents: memory.worked('tangents'),
    maps: memory.worked('label map of areas'),
    fromFocus: memory.worked('object from focus'),
  });
  const first = counts();
  const paint = vi.spyOn(munsell, 'munsellToLab');
  const turn = vi.spyOn(hue, 'hueOn');
  const after = run(edited);
  const painted = paint.mock.calls.length;
  const hues = turn.mock.calls.length;
  const pairs = judge.mock.calls.map((call) => call.slice(0, 2));
  for (const spy of [paint, turn, judge]) spy.mockRestore();
  const worked = Object.fromEntries(
    Object.entries(counts()).map(([of, count]) => [of, count - first[of as keyof typeof first]]),
  ) as typeof first;
  const isKept = ({ visible }: LayerAreas, index: number): boolean =>
    visible === before.areas.layers[index]?.visible;
  const kept = after.areas.layers.filter(isKept).length;
  const changed = new Set(
    after.plan.coveringOrder.flatMap((object, position) => {
      const layer = after.areas.layers[position];
      return layer && isKept(layer, position) ? [] : (after.plan.objects[object]?.outline ?? []);
    }),
  );
  const tangents = {
    pairsAtFirst,
    pairs: pairs.length,
    pairsOfUnchanged: pairs.filter((pair) => pair.every((outline) => !changed.has(outline as Outline)))
      .length,
  };
  return { worked, kept, painted, hues, tangents, objects: after.objects.length, first };
}

describe('in a plan of a hundred objects', () => {
  it('moving one builds its outline alone, keeps what is seen of the others, and mixes no colour anew', () => {
    const { worked, kept, painted, hues, tangents, objects, first } = workOf((text) =>
      text.replace(/shape circle ([\d.]+) at \(([\d.]+)/u, (_, size: string, x: string) => {
        return `shape circle ${size} at (${Number(x) + 0.5}`;
      }),
    );
    expect(objects).toBe(100);
    expect(worked.outlines).toBe(1);
    expect(kept).toBeGreaterThan(90);
    expect(painted).toBe(0);
    expect(first.sides).toBeGreaterThan(90);
    expect(worked.sides).toBeLessThan(10);
    expect(worked.runs).toBeLessThan(10);
    expect([worked.areas, worked.tangents, worked.maps]).toEqual([1, 1, 1]);
    expect(tangents.pairsAtFirst).toBeGreaterThan(250);
    expect(tangents.pairs).toBeGreaterThan(0);
    expect(tangents.pairs).toBeLessThan(20);
    expect(tangents.pairsOfUnchanged).toBe(0);
    expect(first.fromFocus).toBeGreaterThan(50);
    expect(worked.fromFocus).toBeLessThan(10);
    expect(hues).toBe(0);
  });

  it('another value changes no outline, nothing that is seen, and no border in its place', () => {
    const { worked, kept, hues, tangents } = workOf((text) => text.replace(/ {2}value 3\n/u, '  value 4\n'));
    expect(worked).toMatchObject({ outlines: 0, sides: 0, runs: 0, meetings: 0, fromFocus: 0 });
    expect(worked).toMatchObject({ areas: 0, tangents: 0, maps: 0 });
    expect([kept, hues, tangents.pairs]).toEqual([100, 0, 0]);
  });

  it('another colour is painted anew where it is used, and changes no outline', () => {
    const { worked, painted, hues, tangents } = workOf((text) =>
      text.replace('colour plum #5b2a4d', 'colour plum #5f2a51'),
    );
    expect(painted).toBeGreaterThan(0);
    expect(worked).toMatchObject({ outlines: 0, sides: 0, runs: 0, meetings: 0, fromFocus: 0 });
    // Its own hue, and that on the painters’ wheel by which it is warm.
    expect([hues, tangents.pairs]).toEqual([2, 0]);
  });

  it('a remark changes nothing', () => {
    const { worked, kept, painted, hues, tangents } = workOf((text) =>
      text.replace('\n', '  // seen in May\n'),
    );
    expect(worked).toEqual({
      outlines: 0,
      sides: 0,
      runs: 0,
      meetings: 0,
      borders: 0,
      tones: 0,
      areas: 0,
      tangents: 0,
      maps: 0,
      fromFocus: 0,
    });
    expect([kept, painted, hues, tangents.pairs]).toEqual([100, 0, 0, 0]);
  });
});
