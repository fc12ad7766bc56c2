import { describe, expect, it } from 'vitest';
import { combText } from '../../../tests/support/combs.js';
import { handBench, handBenchWith, movedBy, ROOM } from './test-support.js';

const INCHES = 'canvas 24 x 18 in\nfocus centre\nobject jug\n';

describe('an object that is moved', () => {
  it.each([
    // [what is said of it, by how much, what is said then]
    ['  shape circle 4 at (12, 8)', [3, -2], 'shape circle 4 at (15, 6)'],
    [
      '  shape  circle 4 at ( 12 , 8 )  // by the wall',
      [3, 0],
      'shape  circle 4 at ( 15 , 8 )  // by the wall',
    ],
    ['  shape circle 4 at (12.5cm, 50%)', [1, 1], 'shape circle 4 at (13.5cm, 52%)'],
    ['  shape circle 4 at (120 mm, 8)', [0.5, 0], 'shape circle 4 at (125 mm, 8)'],
    ['  shape circle 4 at focus', [2, 0], 'shape circle 4 at focus, 2 cm right'],
    ['  shape circle 4 at focus, 3 cm left', [2, 0], 'shape circle 4 at focus, 1 cm left'],
    ['  shape circle 4 at focus, 3cm left', [5, 1], 'shape circle 4 at focus, 2 cm right, 1 cm down'],
    ['  shape circle 4 at left edge of table', [3, 0], 'shape circle 4 at left edge of table, 3 cm right'],
    ['  shape circle 4\n  at top of table by bottom', [0, -1.5], 'at top of table, 1.5 cm up by bottom'],
    ['  shape rectangle (1, 2) to (4, 7)', [0.25, 1], 'shape rectangle (1.25, 3) to (4.25, 8)'],
    ['  shape outline (1, 2) (4, 7) (0, 9)', [1, 1], 'at (3, 6.5)'],
    ['  shape   outline (1, 2) (4, 7) (0, 9)\n  turn    90', [0, 1], 'at      (2, 6.5)'],
    ['  shape circle 4 at (12, 8)\n  repeat 3 every (5, 0)', [1, 0], 'shape circle 4 at (13, 8)'],
    ['  shape circle 4 at (12, 8)', [0, 0], ''],
    ['  shape circle 4 at (12, 8)', [0.001, 0], ''],
  ] as const)('%s by %j', (line, [right, down], after) => {
    expect(movedBy(`${ROOM}${line}\n`, 'object:jug', right, down)).toBe(after);
  });

  it.each([
    ['  shape circle 4 at (7 1/2, 8)', [1, 0], 'shape circle 4 at (8 1/2, 8)'],
    ['  shape circle 4 at (7 1/2 in, 8)', [0.13, 0], 'shape circle 4 at (7 5/8 in, 8)'],
    ['  shape circle 4 at (1/4, 8)', [-0.5, 0], 'shape circle 4 at (-1/4, 8)'],
    ['  shape circle 4 at (7½ in, 8)', [0.5, 0], 'shape circle 4 at (8 in, 8)'],
    ['  shape circle 4 at (33 1/3%, 8)', [2.4, 0], 'shape circle 4 at (43.33%, 8)'],
    ['  shape circle 4 at focus, 1/2 in left', [0.5, 0], 'shape circle 4 at focus'],
  ] as const)('in inches: %s by %j', (line, [right, down], after) => {
    expect(movedBy(`${INCHES}${line}\n`, 'object:jug', right, down)).toBe(after);
  });

  it('is refused where its outline would cross others too often', () => {
    const bench = handBench(
      `canvas 80 x 30 cm\nobject reeds\n  shape outline ${combText(170, 'upright')}\nobject rain\n  shape outline ${combText(170, 'level', 40)}\n`,
    );
    const { x, y } = bench.grip('object:rain').at;
    const moved = (right: number) =>
      ({ kind: 'move', grip: 'object:rain', to: { x: x + right, y } }) as const;
    expect(bench.write(moved(-40))).toMatch(/^`rain` crosses what lies under it too often/);
    expect(bench.tried(moved(-40))).toMatch(/^`rain` crosses/);
    expect(bench.write(moved(5))).toEqual([
      expect.objectContaining({ newText: expect.any(String) as string }),
    ]);
  });

  it('takes along what is placed by it, and nothing that lies on it', () => {
    const text = `${ROOM}  shape circle 4 at top of table\nobject plum\n  shape circle 2 at (20, 35)\n`;
    const bench = handBench(text);
    const after = handBench(bench.after({ kind: 'move', grip: 'object:table', to: { x: 40, y: 30.5 } }));
    expect(after.grip('object:jug').at).toEqual({ x: 40, y: 23 });
    expect(after.grip('object:plum').at).toEqual({ x: 20, y: 35 });
  });

  it('gets a place for its first copy where it is repeated and has none', () => {
    const line = '  shape outline (1, 2) (4, 7) (0, 9)\n  turn 90\n  repeat 3 every (5, 0)';
    expect(movedBy(`${ROOM}${line}\n`, 'object:jug', 1, 2)).toBe('at (3, 7.5)');
  });

  it('is refused where a repeated one from a file has no place', async () => {
    const text = `${ROOM}  shape from "parts/jug.svg"\n  repeat 3 every (5, 0)\n`;
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><rect width="4" height="5"/></svg>';
    const bench = await handBenchWith(text, { 'file:///studio/parts/jug.svg': { ok: true, text: svg } });
    const why = '`jug` is repeated and has no place of its own: give it an `at`, and it can be moved.';
    expect(bench.grip('object:jug').fixed).toBe(why);
    expect(bench.write({ kind: 'move', grip: 'object:jug', to: { x: 1, y: 1 } })).toBe(why);
  });
});
