import { describe, expect, it } from 'vitest';
import { handBench, movedBy } from './test-support.js';

const ROOM = `canvas 80 x 50 cm
focus upper right of thirds
divide golden, thirds
object table
  shape rectangle (10, 30) to (50, 45)
object jug
`;
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

  it('takes along what is placed by it, and nothing that lies on it', () => {
    const text = `${ROOM}  shape circle 4 at top of table\nobject plum\n  shape circle 2 at (20, 35)\n`;
    const bench = handBench(text);
    const after = handBench(bench.after({ kind: 'move', grip: 'object:table', to: { x: 40, y: 30.5 } }));
    expect(after.grip('object:jug').at).toEqual({ x: 40, y: 23 });
    expect(after.grip('object:plum').at).toEqual({ x: 20, y: 35 });
  });

  it('is refused where a repeated one has no place', () => {
    const bench = handBench(`${ROOM}  shape outline (1, 2) (4, 7) (0, 9)\n  repeat 3 every (5, 0)\n`);
    const why = '`jug` is repeated and has no place of its own: give it an `at`, and it can be moved.';
    expect(bench.grip('object:jug').fixed).toBe(why);
    expect(bench.write({ kind: 'move', grip: 'object:jug', to: { x: 1, y: 1 } })).toBe(why);
  });
});

describe('a change that is only tried', () => {
  it('draws what the text gives once it is written, and leaves the document as it is', () => {
    const text = `${ROOM}  shape circle 4 at top of table\n  value 2\n`;
    const change = { kind: 'move', grip: 'object:table', to: { x: 41, y: 33 } } as const;
    const bench = handBench(text);
    expect(bench.tried(change)).toEqual(handBench(bench.after(change)).scene);
    expect(bench.again()).toEqual(bench.scene);
  });

  it('is refused with its reason, like one that is written', () => {
    const bench = handBench(`${ROOM}  shape circle 4 at (1, 1)\n`);
    const change = { kind: 'move', grip: 'object:jar', to: { x: 41, y: 33 } } as const;
    const why = 'What was to be moved is not in the plan any more.';
    expect(bench.tried(change)).toBe(why);
    expect(bench.write(change)).toBe(why);
  });

  it('is refused when it was made in a drawing of another text', () => {
    const bench = handBench(`${ROOM}  shape circle 4 at (1, 1)\n`);
    const change = { kind: 'move', grip: 'object:jug', to: { x: 41, y: 33 } } as const;
    const why = 'The text has changed meanwhile; try it again in the drawing as it is now.';
    expect(bench.write(change, 2)).toBe(why);
    expect(bench.tried(change, 0)).toBe(why);
  });
});
