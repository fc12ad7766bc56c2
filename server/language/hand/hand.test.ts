import { describe, expect, it } from 'vitest';
import { differing, handBench, handBenchWith, movedBy } from './test-support.js';

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
    const why = 'What was to be changed is not in the plan any more.';
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

describe('the focal point that is moved', () => {
  const at = (words: string): string =>
    `canvas 90 x 60 cm\ndivide thirds, quarters\nfocus ${words}  // her hands\n  win by value\nobject jug\n  shape circle 4 at (12, 8)\n`;
  const move = (words: string, x: number, y: number): string => {
    const bench = handBench(at(words));
    return differing(at(words), bench.after({ kind: 'move', grip: 'focus', to: { x, y } }));
  };
  it.each([
    ['(10, 10)', [60, 20], 'focus upper right of thirds  // her hands'],
    ['(10, 10)', [60.01, 20], 'focus upper right of thirds  // her hands'],
    ['(10, 10)', [61, 20], 'focus (61, 20)  // her hands'],
    ['upper right of thirds', [61, 20], 'focus (61, 20)  // her hands'],
    ['upper right of thirds', [45, 15], 'focus upper centre of quarters  // her hands'],
    ['(50%, 100 mm)', [9, 12], 'focus (10%, 120 mm)  // her hands'],
    ['jug', [13, 8], 'focus (13, 8)  // her hands'],
    ['jug, 2 cm up', [13, 6], 'focus jug, 2 cm up, 1 cm right  // her hands'],
    ['left edge at 20%', [1, 30], 'focus left edge at 50%  // her hands'],
  ] as const)('%s to %j', (words, [x, y], after) => {
    expect(move(words, x, y)).toBe(after);
  });

  it('is put on a crossing by its name', () => {
    const bench = handBench(at('(10, 10)'));
    const after = bench.after({ kind: 'crossing', name: 'quarters upper centre' });
    expect(differing(at('(10, 10)'), after)).toBe('focus upper centre of quarters  // her hands');
    expect(bench.write({ kind: 'crossing', name: 'golden upper centre' })).toBe(
      'The division of the canvas has no such crossing any more.',
    );
  });

  it.each([
    ['canvas 90 x 60 cm\n\nobject jug\n', 'canvas 90 x 60 cm\nfocus lower left\n\nobject jug\n'],
    [
      'canvas  90 x 60 cm\r\n  medium  oil\r\n  // on panel\r\nscale   5\r\n',
      'canvas  90 x 60 cm\r\n  medium  oil\r\n  // on panel\r\nfocus   lower left\r\nscale   5\r\n',
    ],
    ['', 'focus lower left\n'],
  ])('gets a line where there is none: %j', (text, after) => {
    expect(handBench(text).after({ kind: 'crossing', name: 'golden lower left' })).toBe(after);
  });
});

describe('a lead that is moved', () => {
  const text = (line: string): string => `${ROOM}  shape circle 4 at (12, 8)\n${line}\n`;
  it.each([
    ['lead kerb from (2, 40) to focus  // low', 'from', [3, 1], 'lead kerb from (5, 41) to focus  // low'],
    [
      'lead kerb from left edge at 20% to focus',
      'from',
      [0.5, 5],
      'lead kerb from left edge at 30% to focus',
    ],
    ['lead kerb from left edge to focus', 'from', [0, 5], 'lead kerb from left edge at 60% to focus'],
    [
      'lead kerb from left edge at 100 mm to focus',
      'from',
      [0, 5],
      'lead kerb from left edge at 150 mm to focus',
    ],
    ['lead kerb from left edge at 20% to focus', 'from', [9, 5], 'lead kerb from (9, 15) to focus'],
    [
      'lead kerb from left edge of table at 20% to focus',
      'from',
      [0, 3],
      'lead kerb from left edge of table at 40% to focus',
    ],
    [
      'lead kerb from (2, 40) through (9, 9) (30, 3) to focus',
      'through:2',
      [1, 1],
      'lead kerb from (2, 40) through (9, 9) (31, 4) to focus',
    ],
    ['lead kerb from (2, 40) to jug', 'to', [5, 1], 'lead kerb from (2, 40) to (17, 9)'],
    [
      'lead kerb from (2, 40) to top of jug, 1 cm up',
      'to',
      [5, 0],
      'lead kerb from (2, 40) to top of jug, 1 cm up, 5 cm right',
    ],
    ['lead kerb from (2, 40) to (20, 9)', 'to', [-7.9, -1], 'lead kerb from (2, 40) to jug'],
  ] as const)('%s: %s by %j', (line, place, [right, down], after) => {
    expect(movedBy(text(line), `lead:kerb:${place}`, right, down)).toBe(after);
  });

  it('aims at the focal point again when it is put down on it', () => {
    const bench = handBench(text('lead kerb from (2, 40) to (20, 9)'));
    const to = bench.grip('focus').at;
    const after = bench.after({ kind: 'move', grip: 'lead:kerb:to', to });
    expect(after).toContain('lead kerb from (2, 40) to focus\n');
  });

  it.each([
    [
      'lead kerb from (2, 40) through (9, 9) to jug',
      [1, 2],
      'lead kerb from (3, 42) through (10, 11) to jug',
    ],
    [
      'lead kerb from jug through (9, 19) to (30, 3)',
      [1, 2],
      'lead kerb from jug through (10, 21) to (31, 5)',
    ],
    ['lead kerb along table from (2, 40) to focus', [1, 2], 'lead kerb along table from (3, 42) to focus'],
  ] as const)('as a whole: %s by %j', (line, [right, down], after) => {
    expect(movedBy(text(line), 'lead:kerb', right, down)).toBe(after);
  });

  it('is refused as a whole where all its places are those of other things', () => {
    const bench = handBench(text('lead kerb from jug to focus'));
    expect(bench.write({ kind: 'move', grip: 'lead:kerb', to: { x: 1, y: 1 } })).toBe(
      '`kerb` has no place of its own, only those of other things: move one of its ends by itself.',
    );
  });

  it('is refused where it would lead nowhere', () => {
    const bench = handBench(text('lead kerb from (2, 40) to (20, 9)'));
    expect(bench.write({ kind: 'move', grip: 'lead:kerb:to', to: { x: 2, y: 40 } })).toMatch(
      /leads nowhere/u,
    );
  });

  it('does not aim at a thing whose name reads as another place', () => {
    const named = text('lead kerb from (2, 40) to (20, 9)').replace('object jug', 'object centre');
    expect(movedBy(named, 'lead:kerb:to', -8, -1)).toBe('lead kerb from (2, 40) to (12, 8)');
  });
});

describe('how a thing looks', () => {
  const bare = `${ROOM}  shape circle 4 at (12, 8)  // jug\n`;
  const colours = 'colour Teal #2f6f73\n';
  it.each([
    [bare, { kind: 'resize', factor: 1.5 }, 'shape circle 6 at (12, 8)  // jug'],
    [`${bare}  resize 80%\n`, { kind: 'resize', factor: 1.5 }, 'resize 120%'],
    [
      bare.replace('circle 4', 'ellipse 4 x 6 cm'),
      { kind: 'resize', factor: 2 },
      'shape ellipse 8 x 12 cm at (12, 8)  // jug',
    ],
    [
      bare.replace('circle 4 at (12, 8)', 'outline (1, 2) (3, 4) (0, 9)'),
      { kind: 'resize', factor: 2 },
      'resize 200%',
    ],
    [bare, { kind: 'value', step: 3 }, 'value 3'],
    [`${bare}  value  2.5  // dim\n`, { kind: 'value', step: 4.2 }, 'value  4  // dim'],
    [bare, { kind: 'colour', colour: '#abcdef' }, 'colour #abcdef'],
    [
      `${bare}  colour navy  // so far\n${colours}`,
      { kind: 'colour', colour: 'teal' },
      'colour Teal  // so far',
    ],
    [`${bare}  colour navy\n`, { kind: 'colour', colour: 'navy' }, ''],
  ] as const)('%s -> %j', (text, change, after) => {
    expect(differing(text, handBench(text).after({ ...change, subject: 'object:jug' }))).toBe(after);
  });

  it.each([
    [{ kind: 'value', step: 9 }, 'The scale has steps 1 (darkest) to 5 (lightest), so there is no value 9.'],
    [{ kind: 'colour', colour: '' }, 'A colour is missing.'],
    [{ kind: 'colour', colour: 'murk' }, /./u],
    [{ kind: 'colour', colour: 'navy\nobject b' }, /./u],
    [{ kind: 'colour', colour: 'rgb(1 2 3)  // \n' }, /./u],
  ] as const)('%j is refused', (change, why) => {
    const answer = handBench(bare).write({ ...change, subject: 'object:jug' });
    expect(typeof answer === 'string' ? answer : JSON.stringify(answer)).toMatch(why);
    expect(typeof answer).toBe('string');
  });
});

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
