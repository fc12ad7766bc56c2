import { describe, expect, it } from 'vitest';
import { handBench, movedBy, ROOM } from './test-support.js';

describe('a point of an outline that is moved', () => {
  const OUTLINE = '  shape outline (1, 2) (4, 7)  (0,9)  // a shawl';
  it.each([
    [OUTLINE, 2, [1, 1], 'shape outline (1, 2) (5, 8)  (0,9)  // a shawl'],
    ['  shape smooth (1, 2) (4, 7) (0, 9)\n    (0, 12)', 4, [1, 1], '(1, 13)'],
    [
      '  shape outline (1, 2) top of table (0, 9)',
      2,
      [1, -1],
      'shape outline (1, 2) top of table, 1 cm right, 1 cm up (0, 9)',
    ],
    [
      '  shape outline (1, 2) focus, 2 cm left (0, 9)',
      2,
      [1, 0],
      'shape outline (1, 2) focus, 1 cm left (0, 9)',
    ],
    ['  shape outline (10 mm, 2) (5%, 7) (0, 9)', 2, [1, 0], 'shape outline (10 mm, 2) (6.25%, 7) (0, 9)'],
    [`${OUTLINE}\n  mirror left to right`, 1, [0.5, 0], 'shape outline (0.5, 2) (4, 7)  (0,9)  // a shawl'],
    [`${OUTLINE}\n  turn 90`, 1, [0, 0.5], 'shape outline (1.5, 2) (4, 7)  (0,9)  // a shawl'],
    [`${OUTLINE}\n  repeat 3 every (5, 0)`, 1, [0, 0.5], 'shape outline (1, 2.5) (4, 7)  (0,9)  // a shawl'],
    // It lies inside the box, which stays.
    [`${OUTLINE}\n  resize 200%`, 1, [1, 0], 'shape outline (1.5, 2) (4, 7)  (0,9)  // a shawl'],
    // It makes the box wider, so the shape shifts to the left by half of that: twice as much is written.
    [`${OUTLINE}\n  at (30, 20)`, 2, [1, 0], 'shape outline (1, 2) (6, 7)  (0,9)  // a shawl'],
    [`${OUTLINE}\n  at (30, 20) by lower left`, 2, [1, 0], 'shape outline (1, 2) (5, 7)  (0,9)  // a shawl'],
  ] as const)('%s: point %i by %j', (line, point, [right, down], after) => {
    const text = `${ROOM}${line}\n`;
    const key = `object:jug:point:${point}`;
    expect(movedBy(text, key, right, down)).toBe(after);
    const bench = handBench(text);
    const { x, y } = bench.grip(key).at;
    const to = { x: x + right, y: y + down };
    const { at } = handBench(bench.after({ kind: 'move', grip: key, to })).grip(key);
    expect(at.x).toBeCloseTo(to.x, 2);
    expect(at.y).toBeCloseTo(to.y, 2);
  });

  it('lies where the drawing shows it, after all that is done to its shape', () => {
    const bench = handBench(
      `${ROOM}${OUTLINE}\n  mirror top to bottom\n  size 8 x 14\n  turn 90\n  at (40, 20)\n`,
    );
    const points = bench.grips.filter(({ kind }) => kind === 'point');
    expect(points.map(({ name }) => name)).toEqual(['point 1 of jug', 'point 2 of jug', 'point 3 of jug']);
    // By hand: mirrored in the box from (0, 2) to (4, 9), made twice as large, turned to the right, set down.
    const places = [
      [33, 18],
      [43, 24],
      [47, 16],
    ] as const;
    places.forEach(([x, y], index) => {
      expect(points[index]?.at.x).toBeCloseTo(x, 9);
      expect(points[index]?.at.y).toBeCloseTo(y, 9);
    });
  });

  it('is refused where the box keeps it in its place', () => {
    const bench = handBench(`${ROOM}${OUTLINE}\n  size 8 x 14\n  at (30, 20)\n`);
    const { x, y } = bench.grip('object:jug:point:2').at;
    const change = { kind: 'move', grip: 'object:jug:point:2', to: { x: x + 2, y } } as const;
    expect(bench.write(change)).toMatch(/^`jug` is sized or set down by the box round it/u);
  });
});
