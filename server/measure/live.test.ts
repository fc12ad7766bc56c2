import { describe, expect, it, vi } from 'vitest';
import { parse, type SyntaxTree } from '../../grammar/index.js';
import { marketPlan } from '../../tests/support/market.js';
import * as munsell from '../plan/colour/munsell.js';
import { OutlineCache } from '../plan/outline-cache.js';
import { resolvePlan } from '../plan/resolve.js';
import { measure } from './measure.js';
import { Memory } from './memory.js';

/** What an edit has to work out, in a plan of a hundred objects that was measured before. */
function workOf(edit: (text: string) => string) {
  const outlines = new OutlineCache();
  const memory = new Memory();
  let tree: SyntaxTree | undefined;
  const run = (text: string) => {
    tree = parse(text, tree);
    return measure(resolvePlan(tree, { outlines }), memory);
  };
  const text = marketPlan(100);
  const before = run(text);
  const edited = edit(text);
  expect(edited).not.toBe(text);
  const counts = () => ({
    outlines: outlines.built,
    sides: memory.worked('sides'),
    runs: memory.worked('label runs'),
    borders: memory.worked('borders'),
    tones: memory.worked('notan'),
  });
  const first = counts();
  const paint = vi.spyOn(munsell, 'munsellToLab');
  const after = run(edited);
  const painted = paint.mock.calls.length;
  paint.mockRestore();
  const last = counts();
  const worked = {
    outlines: last.outlines - first.outlines,
    sides: last.sides - first.sides,
    runs: last.runs - first.runs,
    borders: last.borders - first.borders,
    tones: last.tones - first.tones,
  };
  const kept = after.areas.layers.filter(
    ({ visible }, index) => visible === before.areas.layers[index]?.visible,
  ).length;
  return { worked, kept, painted, objects: after.objects.length, first };
}

describe('in a plan of a hundred objects', () => {
  it('moving one builds its outline alone, keeps what is seen of the others, and mixes no colour anew', () => {
    const { worked, kept, painted, objects, first } = workOf((text) =>
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
  });

  it('another value changes no outline, nothing that is seen, and no border in its place', () => {
    const { worked, kept } = workOf((text) => text.replace(/ {2}value 3\n/u, '  value 4\n'));
    expect(worked).toMatchObject({ outlines: 0, sides: 0, runs: 0 });
    expect(kept).toBe(100);
  });

  it('another colour is painted anew where it is used, and changes no outline', () => {
    const { worked, painted } = workOf((text) => text.replace('colour plum #5b2a4d', 'colour plum #5f2a51'));
    expect(painted).toBeGreaterThan(0);
    expect(worked).toMatchObject({ outlines: 0, sides: 0, runs: 0 });
  });

  it('a remark changes nothing', () => {
    const { worked, kept, painted } = workOf((text) => text.replace('\n', '  // seen in May\n'));
    expect(worked).toEqual({ outlines: 0, sides: 0, runs: 0, borders: 0, tones: 0 });
    expect([kept, painted]).toEqual([100, 0]);
  });
});
