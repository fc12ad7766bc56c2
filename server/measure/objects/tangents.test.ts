import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { visibleAreas } from '../areas/areas.js';
import { partsOf } from '../areas/parts.js';
import { type TangentMeasure, measureTangents } from './tangents.js';

/** A canvas with a diagonal of 100 cm, so that centimetres are percent of it. */
const CANVAS = 'canvas  80 x 60 cm';

function tangentsOf(objects: string, canvas = CANVAS): TangentMeasure {
  const plan = planOf(`${canvas}\n${objects}`);
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  return measureTangents(plan, visibleAreas(plan.canvas, layers));
}

function object(name: string, shape: string): string {
  return `object  ${name}\n  shape   ${shape}\n  value   3\n`;
}

const SEA = object('sky', 'rectangle (0, 0) to (80, 60)') + object('sea', 'rectangle (0, 30) to (80, 60)');

describe('a near tangent', () => {
  it('is two outlines that just miss each other', () => {
    const { touches } = tangentsOf(
      object('plum', 'circle 10 at (20, 20)') + object('cup', 'circle 10 at (30.5, 20)'),
    );
    expect(touches).toHaveLength(1);
    expect(touches[0]).toMatchObject({ one: 0, other: 1, within: false });
    expect(touches[0]?.gap).toBeCloseTo(0.5, 6);
    expect(touches[0]?.shareOfDiagonal).toBeCloseTo(0.005, 8);
    expect(touches[0]?.at.x).toBeCloseTo(25.25, 6);
    expect(touches[0]?.away).toEqual({
      x: expect.closeTo(1, 6) as number,
      y: expect.closeTo(0, 6) as number,
    });
  });

  it('is two straight sides that run along each other', () => {
    // The nearest lies on the middle of the stretch.
    const { touches } = tangentsOf(
      object('jar', 'rectangle (10, 10) to (20, 30)') +
        object('bottle', 'rectangle (20.3, 14.5) to (30, 25.5)'),
    );
    expect(touches).toHaveLength(1);
    expect(touches[0]).toMatchObject({ along: true, within: false });
    expect(touches[0]?.gap).toBeCloseTo(0.3, 6);
    expect(touches[0]?.at.x).toBeCloseTo(20.15, 6);
    expect(touches[0]?.at.y).toBeCloseTo(20, 6);
  });

  it('is a thing that all but reaches the border of another that it lies on', () => {
    const scene = (plum: string) =>
      tangentsOf(object('plate', 'circle 30 at (30, 30)') + object(plum, 'circle 8 at (19.5, 30)'));
    expect(scene('plum, secondary').touches).toEqual([
      expect.objectContaining({ one: 0, other: 1, within: true, gap: expect.closeTo(0.5, 2) as number }),
    ]);
    // A minor one is part of it, as a spot on an apple.
    expect(scene('plum').touches).toEqual([]);
  });

  it.each([
    ['circles that kiss', object('a', 'circle 10 at (20, 20)') + object('b', 'circle 10 at (30, 20)')],
    ['a ball that lies on a line', SEA + object('ball', 'circle 8 at (30, 26)')],
    [
      'a corner that touches a side',
      object('a', 'rectangle (10, 10) to (30, 30)') + object('b', 'outline (30, 20) (40, 15) (40, 25)'),
    ],
    // Common practice, no source: the classic one, a head whose top meets the horizon.
    ['a head that just reaches the horizon', SEA + object('head', 'circle 8 at (30, 34)')],
  ])('is %s', (_, scene) => {
    const { touches } = tangentsOf(scene);
    expect(touches).toHaveLength(1);
    expect(touches[0]?.gap).toBeCloseTo(0, 6);
  });

  it.each([
    ['things that stand clear', object('a', 'circle 10 at (20, 20)') + object('b', 'circle 10 at (33, 20)')],
    ['things that overlap', object('a', 'circle 10 at (20, 20)') + object('b', 'circle 10 at (29, 20)')],
    [
      'things that cross without a corner inside',
      object('a', 'rectangle (10, 20) to (50, 22)') + object('b', 'rectangle (29, 5) to (31, 50)'),
    ],
    ['a head that stands into the sky', SEA + object('head', 'circle 8 at (30, 32)')],
    [
      'a part that lies inside a thing',
      object('face', 'circle 20 at (30, 30)') + object('eye', 'circle 3 at (21.8, 30)'),
    ],
    [
      'a wall and a floor that share a border',
      object('wall', 'rectangle (0, 0) to (80, 30)') + object('floor', 'rectangle (0, 30) to (80, 60)'),
    ],
    [
      'a house that stands on a line',
      SEA + object('house', 'outline (20, 30) (20, 20) (26, 14) (32, 20) (32, 30)'),
    ],
    [
      'even gaps between boards',
      object('a', 'rectangle (10, 10) to (20, 30)') +
        object('b', 'rectangle (20.5, 12) to (30, 29)') +
        object('c', 'rectangle (30.5, 10) to (40, 30)'),
    ],
    [
      'tiles with even joints',
      [10, 20.5]
        .flatMap((left) => [10, 20.5].map((top) => [left, top] as const))
        .map(([left, top], i) =>
          object(`tile-${i}`, `rectangle (${left}, ${top}) to (${left + 10}, ${top + 10})`),
        )
        .join(''),
    ],
    [
      'an even margin all round',
      object('dish', 'rectangle (10, 10) to (40, 30)') +
        object('cloth', 'rectangle (10.5, 10.5) to (39.5, 29.5)').replace('cloth', 'cloth, secondary'),
    ],
    [
      'a narrow space between panes of one window',
      object('window', 'rectangle (10, 10) to (40, 40)') +
        object('a', 'rectangle (12, 12) to (24.8, 38)') +
        object('b', 'rectangle (25.2, 12) to (38, 38)'),
    ],
    [
      'a narrow strip between two grounds',
      object('sky', 'rectangle (0, 0) to (80, 29.5)') + object('sea', 'rectangle (0, 30) to (80, 60)'),
    ],
    [
      'an outline that is lost',
      object('mist', 'circle 20 at (30, 30)').replace('value', 'edges   lost\n  value') +
        object('plum', 'circle 10 at (45.5, 30)'),
    ],
    [
      'what another covers',
      object('a', 'circle 10 at (20, 20)') +
        object('b', 'circle 10 at (30, 20)') +
        object('post', 'rectangle (22, 10) to (28, 40)'),
    ],
    ['what lies off the canvas', object('a', 'circle 10 at (-5, 20)') + object('b', 'circle 10 at (-5, 30)')],
  ])('is not %s', (_, scene) => {
    expect(tangentsOf(scene).touches).toEqual([]);
  });
});

describe('a texture', () => {
  const scene = (times: number) => {
    const reeds = `object  reeds\n  shape   circle 4 at (10, 20)\n  repeat  ${times} every (0.2, 0)\n`;
    const small = object('fly', 'circle 1 at (12, 19)') + object('plum', 'circle 4 at (12, 24.2)');
    const plan = planOf(`${CANVAS}\n${reeds}${small}`);
    const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
    const { touches } = measureTangents(plan, visibleAreas(plan.canvas, layers));
    return { touches: touches.length, parts: partsOf(plan)[0] };
  };

  it('of thousands of corners is no thing that touches another or holds parts', () => {
    expect(scene(20)).toEqual({ touches: 1, parts: [1] });
    expect(scene(200)).toEqual({ touches: 0, parts: [] });
  });
});

describe('a kissed edge', () => {
  it.each([
    ['just misses', 'circle 10 at (5.4, 30)', 'left', 0.4],
    ['just touches', 'circle 10 at (75, 30)', 'right', 0],
    ['just runs over', 'circle 10 at (40, 4.7)', 'top', -0.3],
    ['points at', 'outline (40, 59.5) (30, 40) (50, 40)', 'bottom', 0.5],
    ['runs along', 'rectangle (0.5, 20) to (20, 40)', 'left', 0.5],
  ] as const)('is an outline that %s it', (_, shape, side, gap) => {
    const { edges } = tangentsOf(object('thing', shape));
    expect(edges).toEqual([
      expect.objectContaining({ object: 0, side, gap: expect.closeTo(gap, 6) as number }),
    ]);
  });

  it.each([
    ['stands clear', 'circle 10 at (8, 30)'],
    ['is plainly cut off', 'circle 10 at (2, 30)'],
    ['bounds at the edge', 'rectangle (0, 20) to (20, 40)'],
    [
      'is cut off by the edge in a line of its own',
      'outline (38, 0) (42, 0) (42, 20) (50, 30) (30, 30) (38, 20)',
    ],
    ['runs over the edge all along, and is cut off by it', 'rectangle (-0.5, 20) to (20, 40)'],
    ['has an even margin all round', 'rectangle (0.5, 0.5) to (79.5, 59.5)'],
  ])('is not one that %s', (_, shape) => {
    expect(tangentsOf(object('thing', shape)).edges).toEqual([]);
  });

  it('is not told where another object covers it', () => {
    expect(
      tangentsOf(object('thing', 'circle 10 at (5, 30)') + object('curtain', 'rectangle (-5, 0) to (3, 60)'))
        .edges,
    ).toEqual([]);
  });
});

describe('a filled corner', () => {
  it.each([
    ['a point of an outline', 'outline (0, 60) (20, 20) (30, 50)', 'lower left', 'run into'],
    ['a slope that runs into it', 'outline (40, 30) (80, 0) (80, 60) (40, 60)', 'upper right', 'run into'],
    ['a triangle that cuts it off', 'outline (0, 0) (20, 0) (0, 15)', 'upper left', 'cut off'],
    [
      'a square on its tip that cuts it off',
      'outline (80, 30) (60, 60) (80, 90) (100, 60)',
      'lower right',
      'cut off',
    ],
    ['a rectangle in it', 'rectangle (60, 45) to (80, 60)', 'lower right', 'filled'],
    ['a rectangle that goes on beyond it', 'rectangle (60, 45) to (90, 70)', 'lower right', 'filled'],
  ] as const)('is %s', (_, shape, corner, kind) => {
    expect(tangentsOf(object('thing', shape)).corners).toEqual([
      {
        object: 0,
        corner,
        kind,
        shareOfDiagonal: expect.closeTo(0, 9) as number,
        at: expect.anything() as object,
      },
    ]);
  });

  it.each([
    ['a ground that holds it', 'rectangle (0, 0) to (30, 60)'],
    ['a border that runs out beside it', 'outline (40, 30) (80, 3) (80, 60) (40, 60)'],
    ['a shape outside that touches it', 'rectangle (-20, -20) to (0, 0)'],
    ['a bush in it', 'smooth (0, 40) (8, 38) (16, 46) (20, 60) (0, 60)'],
    ['a round table in it', 'circle 40 at (0, 60)'],
    ['a block with a slanting side', 'outline (0, 40) (15, 40) (20, 60) (0, 60)'],
  ])('is not %s', (_, shape) => {
    expect(tangentsOf(object('thing', shape)).corners).toEqual([]);
  });

  it('is not one of the background, nor one whose border is hidden', () => {
    const box = object('box', 'rectangle (60, 45) to (80, 60)');
    expect(tangentsOf(box.replace('  shape', '  plane   background\n  shape')).corners).toEqual([]);
    const before = (top: number) => box + object('cat', `rectangle (58, ${top}) to (70, 58)`);
    expect(tangentsOf(before(43)).corners).toEqual([]);
    expect(tangentsOf(before(50)).corners).toHaveLength(1);
  });
});

describe('the tangents of any picture', () => {
  const ball = fc.record({
    x: fc.integer({ min: 0, max: 320 }).map((quarter) => quarter / 4),
    y: fc.integer({ min: 0, max: 240 }).map((quarter) => quarter / 4),
    across: fc.integer({ min: 4, max: 20 }),
  });
  const scene = (
    balls: readonly { x: number; y: number; across: number }[],
    size: number,
    across: (x: number) => number,
  ) =>
    tangentsOf(
      balls
        .map(({ x, y, across: wide }, index) =>
          object(`ball-${index}`, `circle ${wide * size} at (${across(x) * size}, ${y * size})`),
        )
        .join(''),
      `canvas  ${80 * size} x ${60 * size} cm`,
    );
  const summary = ({ touches, edges }: TangentMeasure, flip = false) => [
    ...touches
      .map(({ one, other, shareOfDiagonal }) => `${one} ${other} ${shareOfDiagonal.toFixed(6)}`)
      .sort(),
    ...edges
      .map(({ object: of, side, shareOfDiagonal }) => {
        const mirrored = side === 'left' ? 'right' : side === 'right' ? 'left' : side;
        return `${of} ${flip ? mirrored : side} ${shareOfDiagonal.toFixed(6)}`;
      })
      .sort(),
  ];

  it('are the same in the mirror and at another size', () => {
    fc.assert(
      fc.property(fc.array(ball, { minLength: 2, maxLength: 9 }), fc.constantFrom(2, 0.5), (balls, size) => {
        const here = summary(scene(balls, 1, (x) => x));
        expect(
          summary(
            scene(balls, 1, (x) => 80 - x),
            true,
          ),
        ).toEqual(here);
        expect(summary(scene(balls, size, (x) => x))).toEqual(here);
      }),
      { numRuns: 60, seed: 33 },
    );
  });

  it('are at the same place of straight sides that are partly covered', () => {
    const at = (across: (x: number) => number) => {
      const corners = (...places: readonly (readonly [number, number])[]) =>
        `outline ${places.map(([x, y]) => `(${across(x)}, ${y})`).join(' ')}`;
      const sail = object('sail', corners([10.5, 60.5], [10.5, 0.5], [40.05, 60.5]));
      const cloth = object('cloth', corners([10.05, 60.5], [10.05, 10.5], [20.5, 60.5]));
      const board = object('board', corners([0.8, 0.5], [10.3, 0.5], [10.3, 59.5], [0.8, 59.5]));
      const { touches } = tangentsOf(sail + cloth + board);
      return touches.filter(({ one, other }) => one === 0 && other === 2).map((touch) => touch.at);
    };
    const [here] = at((x) => x);
    const [mirrored] = at((x) => 80 - x);
    expect(here?.x).toBeCloseTo(80 - (mirrored?.x ?? 0), 6);
    expect(here?.y).toBeCloseTo(mirrored?.y ?? 0, 6);
  });

  it.each([
    ['a side on the edge', 'rectangle (60, 20) to (79.95, 40)', 'circle 4 at (20, 20)'],
    ['two sides drawn as one', 'rectangle (10, 10) to (30, 30)', 'rectangle (30.05, 10) to (50, 30)'],
    ['two things that only touch', 'rectangle (10, 10) to (30, 30)', 'outline (29.95, 20) (40, 15) (40, 25)'],
  ])('are those of %s just at its limit at any size of the canvas', (_, one, other) => {
    const count = (size: number) => {
      const sized = (shape: string) => shape.replace(/[\d.]+/g, (figure) => String(Number(figure) * size));
      const { touches, edges } = tangentsOf(
        object('a', sized(one)) + object('b', sized(other)),
        `canvas  ${80 * size} x ${60 * size} cm`,
      );
      return [touches.length, edges.length];
    };
    expect(count(0.7)).toEqual(count(1));
  });
});
