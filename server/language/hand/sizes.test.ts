import { describe, expect, it } from 'vitest';
import type { FrameHandle, Spot } from '../../drawing/scene.js';
import { handlePlace } from '../../drawing/handling/frame.js';
import { differing, handBench, handBenchWith, ROOM } from './test-support.js';

const INCHES = 'canvas 24 x 18 in\nfocus centre\nobject jug\n';

/** The change of the jug's size by a handle that goes so far. */
function sizing(
  { grip }: Pick<ReturnType<typeof handBench>, 'grip'>,
  handle: FrameHandle,
  [right, down]: readonly [number, number],
  keepsProportion: boolean,
) {
  const { frame } = grip('object:jug');
  if (!frame) throw new Error('no frame');
  const { x, y } = handlePlace(frame, handle);
  const to: Spot = { x: x + right, y: y + down };
  return { kind: 'size', subject: 'object:jug', handle, to, keepsProportion } as const;
}

function sized(
  text: string,
  handle: FrameHandle,
  by: readonly [number, number],
  keepsProportion = false,
): string {
  const bench = handBench(text);
  return differing(text, bench.after(sizing(bench, handle, by, keepsProportion)));
}

describe('an object that is sized by a handle', () => {
  it.each([
    // [what is said of it, the handle and how far it goes, what is said then]
    ['  shape rectangle (1, 2) to (4, 7)', 'lower right', [2, 1], 'shape rectangle (1, 2) to (6, 8)'],
    ['  shape rectangle (1, 2) to (4, 7)', 'upper left', [-1, 0.5], 'shape rectangle (0, 2.5) to (4, 7)'],
    ['  shape rectangle (4, 7) to (1, 2)', 'middle left', [-1, 9], 'shape rectangle (4, 7) to (0, 2)'],
    ['  shape rectangle (1, 7) to (4, 2)', 'upper right', [1, -1], 'shape rectangle (1, 7) to (5, 1)'],
    [
      '  shape  rectangle ( 10% , 20 mm )  to (14, 7)  // by the wall',
      'upper left',
      [-1.6, 1],
      'shape  rectangle ( 8% , 30 mm )  to (14, 7)  // by the wall',
    ],
    [
      '  shape rectangle upper left corner to focus, 2 cm up',
      'lower right',
      [-3, 1],
      'shape rectangle upper left corner to focus, 1 cm up, 3 cm left',
    ],
    [
      '  shape rectangle (1, 2) to (4, 7)\n  at focus',
      'middle right',
      [2, 0],
      'shape rectangle (1, 2) to (6, 7)\nat focus, 1 cm right',
    ],
    ['  shape rectangle 6 x 4 at (12, 8)', 'lower right', [2, 1], 'shape rectangle 8 x 5 at (13, 8.5)'],
    [
      '  shape rectangle 10% x 4 cm at (12, 8)',
      'middle right',
      [2, 1],
      'shape rectangle 12.5% x 4 cm at (13, 8)',
    ],
    ['  shape rectangle 6 x 4', 'middle right', [2, 0], 'shape rectangle 8 x 4\nat (41, 25)'],
    [
      '  shape ellipse 6 x 9\n  at (12, 14)  // low',
      'lower centre',
      [0, 1],
      'shape ellipse 6 x 10\nat (12, 14.5)  // low',
    ],
    ['  shape ellipse 6 x 9\n  at top of table by bottom', 'upper centre', [0, -2], 'shape ellipse 6 x 11'],
    [
      '  shape ellipse 6 x 9\n  at top of table by bottom',
      'upper left',
      [-2, -2],
      'shape ellipse 8 x 11\nat top of table, 1 cm left by bottom',
    ],
    ['  shape circle 4 at (12, 8)', 'middle right', [2, 0], 'shape circle 6 at (13, 8)'],
    ['  shape circle 4 at (12, 8)', 'lower right', [3, 1], 'shape circle 6 at (13, 9)'],
    [
      '  shape ellipse 4 x 2\n  size 8 cm wide\n  at (12, 8)',
      'lower centre',
      [0, 1],
      'size 10 cm wide\nat (12, 8.5)',
    ],
    ['  shape ellipse 4 x 2\n  size 8 x 4\n  at (12, 8)', 'middle left', [-2, 0], 'size 10 x 4\nat (11, 8)'],
    [
      '  shape circle 4 at (12, 8)\n  resize 150%',
      'middle right',
      [3, 0],
      'shape circle 4 at (13.5, 8)\nresize 225% x 150%',
    ],
    [
      '  shape circle 4 at (12, 8)\n  resize 100% x 50%',
      'lower centre',
      [0, 1],
      'shape circle 4 at (12, 8.5)\nresize 100% x 75%',
    ],
    ['  shape path "M 10 10 H 20 V 14 Z"', 'middle right', [5, 0], 'resize 150% x 100%\nat (17.5, 12)'],
    [
      '  shape rectangle (0, 0) to (9, 9)\n  shape circle 3 at (9, 9)\n  at (20, 20)',
      'middle left',
      [10.5, 0],
      'at (25.2, 20)\nresize 1% x 100%',
    ],
    ['  shape rectangle (1, 2) to (4, 7)', 'lower right', [0, 0], ''],
    [
      '  shape rectangle (1.001, 2) to (4, 7)',
      'middle right',
      [1, 0],
      'shape rectangle (1.001, 2) to (5, 7)',
    ],
  ] as const)('%s by its %s', (lines, handle, by, after) => {
    expect(sized(`${ROOM}${lines}\n`, handle, by)).toBe(after);
  });

  it.each([
    ['  shape rectangle 6 x 4 at (12, 8)', 'lower right', [3, 2], 'shape rectangle 9 x 6 at (13.5, 9)'],
    ['  shape rectangle 6 x 4 at (12, 8)', 'upper centre', [5, -2], 'shape rectangle 9 x 6 at (12, 7)'],
    ['  shape rectangle (1, 2) to (4, 8)', 'lower left', [-1, 2], 'shape rectangle (0, 2) to (4, 10)'],
    ['  shape path "M 10 10 H 20 V 14 Z"\n  resize 50%', 'lower right', [5, 2], 'resize 100%\nat (17.5, 13)'],
  ] as const)('in proportion: %s by its %s', (lines, handle, by, after) => {
    expect(sized(`${ROOM}${lines}\n`, handle, by, true)).toBe(after);
  });

  it.each([
    [
      '  shape rectangle 6 1/2 x 4 at (12, 8)',
      'middle right',
      [1.25, 0],
      'shape rectangle 7 3/4 x 4 at (12.63, 8)',
    ],
    [
      '  shape rectangle (1 1/4 in, 2) to (4, 7)',
      'upper left',
      [0.5, 0],
      'shape rectangle (1 3/4 in, 2) to (4, 7)',
    ],
  ] as const)('in inches: %s by its %s', (lines, handle, by, after) => {
    expect(sized(`${INCHES}${lines}\n`, handle, by)).toBe(after);
  });

  it.each([
    '  shape rectangle 6 x 4 at (12, 8)\n  turn 30',
    '  shape rectangle (10, 20) to (16, 24)\n  turn -75',
    '  shape rectangle (1, 2) to (7, 6)\n  turn 30\n  at (20, 20) by upper left',
    '  shape path "M 10 10 H 20 V 14 Z"\n  turn 200\n  at (20, 20) by lower right',
    '  shape ellipse 6 x 4\n  mirror left to right\n  turn 30\n  at (12, 8)\n  repeat 3 every (9, 1) turning 10',
    '  shape path "M 10 10 H 20 V 14 Z"\n  turn 45\n  repeat 3 every (9, 1)',
  ])('keeps what is opposite of the handle where it is when turned or repeated: %s', (lines) => {
    const bench = handBench(`${ROOM}${lines}\n`);
    const before = bench.grip('object:jug').frame;
    const change = sizing(bench, 'upper right', [3, -2], false);
    const after = handBench(bench.after(change)).grip('object:jug').frame;
    if (!before || !after) throw new Error('no frame');
    for (const [handle, at] of [
      ['lower left', handlePlace(before, 'lower left')],
      ['upper right', change.to],
    ] as const) {
      const { x, y } = handlePlace(after, handle);
      expect(x).toBeCloseTo(at.x, 1);
      expect(y).toBeCloseTo(at.y, 1);
    }
  });

  it('is not offered where points are, or where a part of a file is turned', async () => {
    for (const lines of [
      '  shape outline (1, 2) (4, 7) (0, 9)\n  size 8 x 14',
      '  shape circle 4\n  shape smooth (1, 2) (4, 7) (0, 9)',
    ]) {
      const bench = handBench(`${ROOM}${lines}\n`);
      expect(bench.grip('object:jug').frame).toBeUndefined();
      const change = {
        kind: 'size',
        subject: 'object:jug',
        handle: 'upper left',
        to: { x: 1, y: 1 },
        keepsProportion: false,
      } as const;
      expect(bench.write(change)).toBe('jug has no size of its own that could be changed here.');
    }
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><rect width="4" height="5"/></svg>';
    const file = { 'file:///studio/parts/jug.svg': { ok: true, text: svg } } as const;
    const from = `${ROOM}  shape from "parts/jug.svg"\n`;
    const whole = await handBenchWith(from, file);
    expect(differing(from, whole.after(sizing(whole, 'middle right', [4, 0], false)))).toBe(
      'resize 200% x 100%\nat (4, 2.5)',
    );
    const turned = await handBenchWith(`${from}  turn 20\n`, file);
    expect(turned.grip('object:jug').frame).toBeUndefined();
  });

  it('is refused where nothing would be left', () => {
    const bench = handBench('canvas 60 x 40 m\nobject jug\n  shape rectangle (1, 1) to (1.03, 5)\n');
    expect(bench.write(sizing(bench, 'middle right', [-1, 0], false))).toBe(
      'So small it can’t be written down: leave it a little larger.',
    );
    expect(typeof bench.write(sizing(bench, 'lower centre', [0, -1], false))).toBe('object');
    const ruled = handBench(`${INCHES}  shape rectangle (1 1/2, 1) to (2 1/2, 5)\n`);
    expect(ruled.write(sizing(ruled, 'middle right', [-0.98, 0], false))).toMatch(/^So small/u);
  });

  it('is refused where its place can’t be told', () => {
    const bench = handBench('canvas 40 x 30 cm\nobject jug\n  shape circle 9\n  at middle left of thirds\n');
    expect(bench.write(sizing(bench, 'lower right', [1, 1], false))).toMatch(/can’t be told from its `at`/u);
  });
});
