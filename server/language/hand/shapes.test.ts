import { describe, expect, it } from 'vitest';
import { differing, handBench, ROOM } from './test-support.js';

describe('something new', () => {
  const box = {
    kind: 'new box',
    form: 'rectangle',
    from: { x: 30.004, y: 20 },
    to: { x: 10, y: 5.5 },
  } as const;
  const rectangle = 'rectangle (10, 5.5) to (30, 20)';
  const lead = {
    kind: 'new line',
    form: 'lead',
    points: [
      { x: 1, y: 2 },
      { x: 5, y: 6 },
      { x: 9, y: 30 },
    ],
  } as const;
  it.each([
    ['', `object new-shape\n  shape ${rectangle}\n`],
    ['// nothing yet', `// nothing yet\nobject new-shape\n  shape ${rectangle}`],
    ['canvas 80 x 50 cm\n', `canvas 80 x 50 cm\nobject new-shape\n  shape ${rectangle}\n`],
    [
      'canvas  80 x 50 cm\n\nobject  a\n\tvalue   2\n\nlead x from (1, 2) to (3, 4)\n',
      `canvas  80 x 50 cm\n\nobject  a\n\tvalue   2\n\nobject  new-shape\n\tshape   ${rectangle}\n\nlead x from (1, 2) to (3, 4)\n`,
    ],
    [
      'object new-shape\r\n  value 2\r\n  // darker?\r\nobject b',
      `object new-shape\r\n  value 2\r\n  // darker?\r\nobject b\r\nobject new-shape-2\r\n  shape ${rectangle}`,
    ],
    [
      'canvas 80 x 50 cm\n\n// the ways\nlead x from (1, 2) to (3, 4)\n',
      `canvas 80 x 50 cm\n\nobject new-shape\n  shape ${rectangle}\n\n// the ways\nlead x from (1, 2) to (3, 4)\n`,
    ],
  ])('a rectangle in %j', (text, after) => {
    const bench = handBench(text);
    expect(bench.after(box)).toBe(after);
    expect(bench.selected(box)).toMatch(/^new-shape(?:-2)?$/u);
  });

  it.each([
    [{ ...box, form: 'ellipse' }, 'object new-shape\n  shape ellipse 20 x 14.5 at (20, 12.75)\n'],
    [
      {
        kind: 'new line',
        form: 'outline',
        points: [
          { x: 1, y: 2 },
          { x: 1, y: 2 },
          { x: 5, y: 6 },
          { x: 9, y: 1 },
          { x: 1, y: 2 },
        ],
      },
      'object new-shape\n  shape outline (1, 2) (5, 6) (9, 1)\n',
    ],
    [lead, 'lead new-lead from (1, 2) through (5, 6) to (9, 30)\n'],
    [
      {
        kind: 'new line',
        form: 'outline',
        points: Array.from({ length: 10 }, (_, i) => ({ x: i, y: i * i })),
      },
      'object new-shape\n  shape outline (0, 0) (1, 1) (2, 4) (3, 9) (4, 16) (5, 25) (6, 36) (7, 49)\n    (8, 64) (9, 81)\n',
    ],
  ] as const)('%j', (change, lines) => {
    const text = 'canvas 80 x 50 cm\n';
    expect(handBench(text).after(change)).toBe(text + lines);
  });

  it('a lead comes after the last one, and ends at what lies there', () => {
    const text = `${ROOM}  shape circle 4 at (12, 8)\nlead a from (1, 2) to jug\nallow even count because "so"\n`;
    const ended = {
      ...lead,
      points: [
        { x: 1, y: 2 },
        { x: 12.1, y: 8 },
      ],
    };
    expect(differing(text, handBench(text).after(ended))).toBe('lead new-lead from (1, 2) to jug');
    expect(handBench(text).after(ended)).toMatch(/jug\nlead new-lead from/u);
  });

  it.each([
    [{ ...box, to: box.from }, 'This has no width or no height: draw it a little larger.'],
    [
      {
        kind: 'new line',
        form: 'outline',
        points: [
          { x: 1, y: 2 },
          { x: 5, y: 2 },
        ],
      },
      'An outline needs three points at least.',
    ],
    [
      {
        kind: 'new line',
        form: 'lead',
        points: [
          { x: 1, y: 2 },
          { x: 1, y: 2 },
        ],
      },
      'A lead needs a place to go to.',
    ],
  ] as const)('%j is refused', (change, why) => {
    expect(handBench('').write(change)).toBe(why);
  });
});
