import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { OutlineCache } from '../../plan/outline-cache.js';
import type { Plan } from '../../plan/plan.js';
import { visibleAreas } from '../areas/areas.js';
import { type BorderMeasure, GROUND, measureBorders } from './borders.js';
import { Memory } from '../memory.js';

const CANVAS = 'canvas  80 x 60 cm\n  ground  N 9/\nfocus   upper left';
const WALL = 'object  wall\n  shape   rectangle (0, 0) to (80, 40)\n  value   4\n  edges   soft';
const BOX = 'object  box\n  shape   rectangle (20, 30) to (50, 50)\n  value   2\n  edges   hard';

function bordersOf(plan: Plan, memory = new Memory()): BorderMeasure {
  memory.turnOver();
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  return measureBorders(plan, visibleAreas(plan.canvas, layers), memory);
}

function measured(...blocks: readonly string[]): BorderMeasure {
  return bordersOf(planOf([CANVAS, ...blocks].join('\n')));
}

function lengths({ borders }: BorderMeasure): Readonly<Record<string, number>> {
  return Object.fromEntries(
    borders.map(({ front, behind, length }) => [`${front} on ${behind}`, Number(length.toFixed(6))]),
  );
}

describe('the borders of a box before a wall', () => {
  const measure = measured(WALL, BOX);

  it('are told once, for the area in front', () => {
    expect(lengths(measure)).toEqual({ '1 on 0': 50, '1 on -1': 50, '0 on -1': 50 });
  });

  it('leave out what runs along the edges of the canvas', () => {
    expect(measure.atEdge).toEqual([
      { area: GROUND, side: 'left', length: 20 },
      { area: GROUND, side: 'right', length: 20 },
      { area: GROUND, side: 'bottom', length: 80 },
      { area: 0, side: 'left', length: 40 },
      { area: 0, side: 'top', length: 80 },
      { area: 0, side: 'right', length: 40 },
    ]);
  });

  it('have the contrast of the two values: steps 4 and 2 of five are Munsell 7 and 3', () => {
    const border = measure.borders.find(({ front, behind }) => front === 1 && behind === 0);
    expect(border).toMatchObject({ sharpness: 1 });
    expect(border?.valueContrast).toBeCloseTo(4, 9);
    expect(border?.colourContrast).toBeCloseTo(0, 3);
    expect(border?.pull).toBeCloseTo(0.24, 4);
  });

  it('come in stretches of half a percent of the diagonal at most', () => {
    const longest = Math.max(...measure.stretches.map(({ length }) => length));
    expect(longest).toBeLessThanOrEqual(0.5 + 1e-9);
    expect(measure.stretches.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(150, 9);
  });

  it('run across or down', () => {
    const across = measure.stretches.filter(({ direction }) => direction < 0.01);
    expect(across.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(30 + 30 + 50, 9);
    expect(new Set(measure.stretches.map(({ direction }) => direction.toFixed(6)))).toEqual(
      new Set(['0.000000', (Math.PI / 2).toFixed(6)]),
    );
  });
});

describe('the sharpness of a border', () => {
  const sharpness = (wall: string, box: string): number | undefined =>
    measured(`${WALL}${wall}`, `${BOX}${box}`).borders.find(
      ({ front, behind }) => front === 1 && behind === 0,
    )?.sharpness;

  it('is that of the edges of what lies in front', () => {
    expect(sharpness('', '')).toBe(1);
    expect(sharpness('', '\n  edges   lost against wall')).toBe(0.1);
  });

  it('is what the one behind says of its edges against the other, where the one in front says nothing', () => {
    expect(sharpness('\n  edges   soft against box', '')).toBe(0.35);
    expect(sharpness('\n  edges   soft against box', '\n  edges   firm against wall')).toBe(0.7);
  });
});

describe('contrast', () => {
  it('is none where one of the two has neither value nor colour', () => {
    const { borders } = measured(WALL, 'object  box\n  shape   circle 10 at (40, 20)');
    const around = borders.find(({ front }) => front === 1);
    expect(around).toMatchObject({ behind: 0, valueContrast: 0, colourContrast: 0, pull: 0 });
  });

  it('is measured against the colour of the bare ground', () => {
    const { borders } = measured('object  box\n  shape   circle 10 at (40, 20)\n  colour  5R 5/10');
    expect(borders[0]?.valueContrast).toBeCloseTo(4, 1);
    // From memory: the a*, b* of 5R 5/10 lie some 45 to 55 from neutral.
    expect(borders[0]?.colourContrast).toBeGreaterThan(40);
    expect(borders[0]?.colourContrast).toBeLessThan(60);
  });
});

describe('the border of a curve', () => {
  it('is as long as the curve', () => {
    const { borders } = measured('object  ball\n  shape   circle 30 at (40, 30)\n  value   2');
    expect(borders[0]?.length).toBeCloseTo(30 * Math.PI, 0);
  });

  it('is found where it is crossed by others', () => {
    const { borders } = measured(
      WALL,
      'object  ball\n  shape   circle 30 at (40, 40)\n  value   2',
      'object  stick\n  shape   outline (10, 20) (70.3, 61.7) (70, 62) (9, 21)\n  value   1',
    );
    const around = borders.filter(({ front }) => front === 1).reduce((sum, { length }) => sum + length, 0);
    // The stick covers two short pieces of it.
    expect(around).toBeGreaterThan(30 * Math.PI - 4);
    expect(around).toBeLessThan(30 * Math.PI - 1);
  });
});

/** Boxes on whole centimetres as columns, rows and extents in an 8 x 6 picture. */
const boxes = fc.array(
  fc.record({
    x: fc.integer({ min: -2, max: 8 }),
    y: fc.integer({ min: -2, max: 6 }),
    width: fc.integer({ min: 1, max: 9 }),
    height: fc.integer({ min: 1, max: 7 }),
  }),
  { minLength: 1, maxLength: 7 },
);
type Boxes = typeof boxes extends fc.Arbitrary<infer T> ? T : never;

const SMALL = 'canvas  8 x 6 cm\nfocus   upper left';

function boxPlan(list: Boxes): Plan {
  const blocks = list.map(
    ({ x, y, width, height }, index) =>
      `object  box${index}\n  shape   rectangle (${x}, ${y}) to (${x + width}, ${y + height})\n  value   ${1 + (index % 5)}`,
  );
  return planOf([SMALL, ...blocks].join('\n'));
}

/** Who is seen in each square centimetre. */
function pixels(list: Boxes): readonly (readonly number[])[] {
  return Array.from({ length: 6 }, (_, row) =>
    Array.from({ length: 8 }, (__, column) =>
      list.findLastIndex(
        ({ x, y, width, height }) => column >= x && column < x + width && row >= y && row < y + height,
      ),
    ),
  );
}

function pixelBorders(list: Boxes): Readonly<Record<string, number>> {
  const map = pixels(list);
  const counts: Record<string, number> = {};
  const count = (one: number, other: number | undefined) => {
    if (other === undefined || one === other) return;
    const key = `${Math.max(one, other)} on ${Math.min(one, other)}`;
    counts[key] = (counts[key] ?? 0) + 1;
  };
  map.forEach((line, row) => {
    line.forEach((area, column) => {
      count(area, line[column + 1]);
      count(area, map[row + 1]?.[column]);
    });
  });
  return counts;
}

describe('any scene', () => {
  it('of boxes on whole centimetres has the borders counted square by square', () => {
    fc.assert(
      fc.property(boxes, (list) => {
        expect(lengths(bordersOf(boxPlan(list)))).toEqual(pixelBorders(list));
      }),
      { numRuns: 300, seed: 31 },
    );
  });

  it('of turned shapes accounts for all of the outlines that are seen, from both sides', () => {
    const turned = fc.array(
      fc.record({
        x: fc.double({ min: 0, max: 80, noNaN: true }),
        y: fc.double({ min: 0, max: 60, noNaN: true }),
        size: fc.double({ min: 1, max: 50, noNaN: true }),
        turn: fc.integer({ min: 0, max: 89 }),
        round: fc.boolean(),
      }),
      { minLength: 1, maxLength: 9 },
    );
    fc.assert(
      fc.property(turned, (shapes) => {
        const blocks = shapes.map(
          ({ x, y, size, turn, round }, index) =>
            `object  shape${index}\n  shape   ${round ? 'ellipse' : 'rectangle'} ${size.toFixed(3)} x ${(size / 2).toFixed(3)}\n` +
            `  at      (${x.toFixed(3)}, ${y.toFixed(3)})\n  turn    ${turn}\n  value   3`,
        );
        const plan = planOf([CANVAS, ...blocks].join('\n'));
        const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
        const areas = visibleAreas(plan.canvas, layers);
        const { borders, atEdge } = measureBorders(plan, areas, new Memory());
        const rings = [...areas.bare, ...areas.layers.flatMap(({ visible }) => visible)];
        const around = rings.reduce((sum, ring) => sum + perimeter(ring), 0);
        const told =
          2 * borders.reduce((sum, { length }) => sum + length, 0) +
          atEdge.reduce((sum, { length }) => sum + length, 0);
        expect(Math.abs(told - around)).toBeLessThan(0.001);
      }),
      { numRuns: 150, seed: 32 },
    );
  });
});

function perimeter(ring: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const next = (i + 2) % ring.length;
    sum += Math.hypot((ring[next] ?? 0) - (ring[i] ?? 0), (ring[next + 1] ?? 0) - (ring[i + 1] ?? 0));
  }
  return sum;
}

describe('from one version to the next', () => {
  const crowd = (x: number): string =>
    [
      CANVAS,
      'object  sky\n  shape   rectangle upper left corner to lower right corner\n  value   4',
      ...Array.from({ length: 100 }, (_, index) => {
        const at = index === 55 ? x : 4 + (index % 10) * 8;
        return `object  ball${index}\n  shape   circle 5 at (${at}, ${4 + Math.floor(index / 10) * 5.6})\n  value   2`;
      }),
    ].join('\n');

  it('only what an edit touches is walked anew', () => {
    const memory = new Memory();
    const outlines = new OutlineCache();
    const before = bordersOf(planOf(crowd(44), { outlines }), memory);
    const walked = memory.worked('sides');
    const after = bordersOf(planOf(crowd(44.5), { outlines }), memory);
    // The ball that moved, the sky behind it, and the neighbour in the row below that it stood on.
    expect(memory.worked('sides') - walked).toBeLessThanOrEqual(4);
    const kept = new Set(before.byFront.map(({ stretches }) => stretches));
    expect(after.byFront.filter(({ stretches }) => !kept.has(stretches)).length).toBeLessThanOrEqual(3);
    expect(after.byFront.find(({ front }) => front === 7)?.stretches).toBe(
      before.byFront.find(({ front }) => front === 7)?.stretches,
    );
  });

  it('nothing is done where nothing changed', () => {
    const memory = new Memory();
    const outlines = new OutlineCache();
    const text = crowd(44);
    const before = bordersOf(planOf(text, { outlines }), memory);
    expect(bordersOf(planOf(`${text}\nnote    "seen from the gate"`, { outlines }), memory)).toBe(before);
  });
});
